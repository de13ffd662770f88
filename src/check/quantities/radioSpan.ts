import { radioMode } from '../../assembly/lines/nets.ts';
import { type SetupPiece, pieceSetting } from '../../assembly/setupPieces.ts';
import { type Span, channelSpan } from '../../standards/radioChannels.ts';

/** How wide a radio's channel is, from its mode. */
export const channelWidthMHz = ({ part }: SetupPiece, mode: string | undefined): number | undefined => part.figure(`radio/modes/${mode ?? ''}/bandwidthMHz`)?.value;

/** The frequencies a radio takes up: its channel at the width of its mode. `undefined` where no channel is set, or it is in no table. */
export function radioSpan(piece: SetupPiece, channel = pieceSetting(piece, 'channel')): Span | undefined {
  if (channel === undefined) return undefined;
  const bandMHz = piece.part.figure('radio/bandMHz')?.value ?? 5500;
  const widthMHz = channelWidthMHz(piece, radioMode(piece)) ?? 20;
  if (bandMHz < 3000 && widthMHz <= NARROW_MHZ) return narrow(channel, widthMHz);
  const span = channelSpan(channel, widthMHz);
  const inBand = span !== undefined && span.lowMHz > 4000 === bandMHz > 4000;
  return inBand ? span : undefined;
}

/** Control radios use the narrow channels 11 to 26 at 2.4 GHz, centred at 2405 + 5·(n − 11) MHz (IEEE 802.15.4; from memory). */
const NARROW_MHZ = 5;
const NARROW_CHANNELS = { first: 11, last: 26, firstMHz: 2405, stepMHz: 5 };

function narrow(channel: number, widthMHz: number): Span | undefined {
  const { first, last, firstMHz, stepMHz } = NARROW_CHANNELS;
  if (channel < first || channel > last) return undefined;
  const centreMHz = firstMHz + stepMHz * (channel - first);
  return { lowMHz: centreMHz - widthMHz / 2, highMHz: centreMHz + widthMHz / 2 };
}

/** The channels a radio can be set to. */
export const channelsOf = ({ part }: SetupPiece): readonly number[] => (part.read('radio/channels') ?? []) as readonly number[];
