import { radioMode } from '../../assembly/lines/nets.ts';
import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import { radioRule, radarListenS, type RadioRule } from '../../standards/radioRules.ts';
import { usableChannels } from '../../standards/radioChannels.ts';
import { channelWidthMHz, channelsOf, radioSpan } from './radioSpan.ts';

export type Region = RadioRule['region'];

/** What the rules of a region say of one channel of a radio. */
export interface Permission {
  readonly channel: number;
  readonly rule: RadioRule | undefined;
  /** Silence before it may send, s. */
  readonly listenS: number;
}

/** The channel that is set, or all that can be set, each under its rule. */
export function permissions(piece: SetupPiece, region: Region): Permission[] {
  const set = pieceSetting(piece, 'channel');
  return (set === undefined ? channelsOf(piece) : [set]).map((channel) => permission(piece, region, channel));
}

export function permission(piece: SetupPiece, region: Region, channel: number): Permission {
  const span = radioSpan(piece, channel);
  if (span === undefined) return { channel, rule: undefined, listenS: 0 };
  const whole = radioRule({ region, ...span });
  if (whole !== undefined) return { channel, rule: whole, listenS: radarListenS(whole, span) };
  const wide = usableChannels(region, channelWidthMHz(piece, radioMode(piece)) ?? 20).find((one) => one.channel.channel === channel && one.span.lowMHz === span.lowMHz);
  return { channel, rule: wide?.rule, listenS: wide?.listenS ?? 0 };
}
