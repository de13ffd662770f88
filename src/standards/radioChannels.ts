import { radarListenS, radioRule, type RadioRule } from './radioRules.ts';

/** A channel of the 2.4 or 5 GHz band, 20 MHz wide. Wider ones join neighbours. */
export interface RadioChannel {
  readonly band: '2.4 GHz' | '5 GHz';
  readonly channel: number;
  readonly centreMHz: number;
}

const upTo = (first: number, last: number, step: number) => Array.from({ length: (last - first) / step + 1 }, (_, i) => first + i * step);

/** Channel n stands at 2407 + 5n and 5000 + 5n MHz (IEEE 802.11; from memory). */
export const RADIO_CHANNELS: readonly RadioChannel[] = [
  ...upTo(1, 13, 1).map((channel) => ({ band: '2.4 GHz' as const, channel, centreMHz: 2407 + 5 * channel })),
  ...[...upTo(36, 64, 4), ...upTo(100, 144, 4), ...upTo(149, 165, 4)].map((channel) =>
    ({ band: '5 GHz' as const, channel, centreMHz: 5000 + 5 * channel })),
];

/** Centres of the wider channels of the 5 GHz band, by the numbers printed for them. */
const WIDER_CENTRES: Readonly<Record<number, readonly number[]>> = {
  40: [...upTo(38, 62, 8), ...upTo(102, 142, 8), 151, 159],
  80: [...upTo(42, 58, 16), ...upTo(106, 138, 16), 155],
  160: [50, 114],
};

export interface Span {
  readonly lowMHz: number;
  readonly highMHz: number;
}

/** The frequencies a channel takes up at a width: for wider ones the block that holds it, `undefined` where there is none. */
export function channelSpan(channel: number, widthMHz: number): Span | undefined {
  const known = RADIO_CHANNELS.find((one) => one.channel === channel);
  if (known === undefined) return undefined;
  if (widthMHz <= 20) return around(known.centreMHz, widthMHz);
  if (known.band === '2.4 GHz') return widthMHz <= 40 ? around(known.centreMHz, widthMHz) : undefined;
  const centre = WIDER_CENTRES[widthMHz]?.map((n) => 5000 + 5 * n).find((mhz) => Math.abs(mhz - known.centreMHz) < widthMHz / 2);
  return centre === undefined ? undefined : around(centre, widthMHz);
}

const around = (centreMHz: number, widthMHz: number): Span => ({ lowMHz: centreMHz - widthMHz / 2, highMHz: centreMHz + widthMHz / 2 });

export interface ChannelUse {
  readonly channel: RadioChannel;
  readonly span: Span;
  readonly rule: RadioRule;
  /** Silence before it may send, s. */
  readonly listenS: number;
}

/** The channels that may be used in a region at a width, each under its rule. */
export function usableChannels(region: RadioRule['region'], widthMHz = 20): readonly ChannelUse[] {
  return RADIO_CHANNELS.flatMap((channel) => {
    const span = channelSpan(channel.channel, widthMHz);
    const rule = span && radioRule({ region, ...span });
    return span && rule ? [{ channel, span, rule, listenS: radarListenS(rule, span) }] : [];
  });
}

/** Whether two spans of frequencies overlap: two transmitters on them disturb each other. */
export function spansOverlap(first: Span, second: Span): boolean {
  return first.lowMHz < second.highMHz && second.lowMHz < first.highMHz;
}
