import { type Figure, assume } from '../../shoot/ledger/figures.ts';
import { power as assumed } from '../../standards/assumptions/power.ts';
import type { SetupPiece } from '../setupPieces.ts';

/** What a piece draws. A figure that is not entered is missing, not nothing. */
export interface Draw {
  /** Over the day, W. */
  readonly typicalW: number;
  readonly peakW: number;
  /** The figure it comes from. */
  readonly figure: Figure | undefined;
  readonly missing: string | undefined;
}

/** `undefined` for what draws nothing: splitters, plates, packs, cables. */
export function drawOf(piece: SetupPiece): Draw | undefined {
  const { part } = piece;
  const motor = part.has('motor');
  if (!part.has('draw')) {
    if (motor) return motorDraw(piece);
    return takesPowerOnly(piece) ? { typicalW: 0, peakW: 0, figure: undefined, missing: 'draw/typicalW' } : undefined;
  }
  const typical = part.figure('draw/typicalW');
  if (typical === undefined) return { typicalW: 0, peakW: 0, figure: undefined, missing: 'draw/typicalW' };
  return { typicalW: typical.value, peakW: Math.max(typical.value, part.figure('draw/peakW')?.value ?? 0), figure: typical, missing: undefined };
}

/** A motor draws while it moves, and most where it stands against a load. */
function motorDraw({ part }: SetupPiece): Draw {
  const moving = part.figure('motor/movingW');
  const stalled = part.figure('motor/stallW');
  const known = moving ?? stalled;
  if (known === undefined) return { typicalW: 0, peakW: 0, figure: undefined, missing: 'motor/movingW' };
  const share = assume(part.ledger, assumed.motorMovesShare).value;
  return { typicalW: known.value * share, peakW: Math.max(known.value, stalled?.value ?? 0), figure: known, missing: undefined };
}

/** A device with a supply socket that feeds nothing else must draw something. */
function takesPowerOnly({ part }: SetupPiece): boolean {
  const ports = Object.values((part.read('ports') ?? {}) as Readonly<Record<string, { kind: string; way: string }>>).filter(({ kind }) => kind === 'power');
  return ports.length > 0 && ports.every(({ way }) => way === 'in');
}
