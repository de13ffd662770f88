import { type PieceMass, pieceMasses } from '../../assembly/hold/pieceMasses.ts';
import type { SetupPiece } from '../../assembly/setupPieces.ts';
import { type MassProperties, composite } from '../../calc/mechanics/massProperties.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';

/** The part of a build that something carries. */
export interface WholeMass extends MassProperties {
  readonly lowG: number;
  readonly highG: number;
  readonly pieces: readonly PieceMass[];
  /** Pieces that have a mass, but no place: not in the centre. */
  readonly unplacedG: number;
  readonly unweighed: readonly SetupPiece[];
}

/** Mass and centre of the placed pieces of a build that `counts` takes; `undefined` where there are none. */
export function wholeMass(asking: Asking, { setup, glass }: SetupGlass, build: string, counts: (piece: SetupPiece) => boolean): WholeMass | undefined {
  const { weighed, unweighed } = pieceMasses(asking.ledger, setup, glass, build);
  const own = weighed.filter(({ piece }) => counts(piece));
  const placed = own.filter((one) => one.placed);
  if (placed.length === 0) return undefined;
  const sum = (key: 'lowG' | 'highG' | 'massG', of: readonly PieceMass[]) => of.reduce((all, one) => all + one[key], 0);
  return { ...composite(placed), lowG: sum('lowG', placed), highG: sum('highG', placed), pieces: placed, unplacedG: sum('massG', own) - sum('massG', placed), unweighed: unweighed.filter(counts) };
}

/** What is left out of a centre of mass, for the notes. */
export function leftOut({ unplacedG, unweighed }: WholeMass): string[] {
  return [
    ...(unplacedG > 0 ? [`Pieces of ${Math.round(unplacedG)} g have no place yet and do not count to the balance.`] : []),
    ...(unweighed.length > 0 ? [`Weighs nothing here: ${unweighed.map(({ name }) => name).join(', ')}.`] : []),
  ];
}

/** The heaviest plate with packs on it, or pack: what one moves to balance the rest. */
export const heaviestPack = ({ pieces }: WholeMass): PieceMass | undefined => pieces.filter(({ piece }) => piece.part.has('pack') || piece.part.has('batteryPlate')).toSorted((a, b) => b.massG - a.massG)[0];
