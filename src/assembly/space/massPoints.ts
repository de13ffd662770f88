import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Vector, add, scale } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';

/** A piece, or a pack on a piece, as a mass at a place, in the frame of its build. */
export interface MassPoint {
  readonly piece: SetupPiece;
  readonly massG: number;
  readonly at: Vector;
}

/** Every placed piece of a setup whose mass is known: at its stated centre, else in the middle of its solids. */
export function massPoints(ledger: Ledger, setup: string, glass: string): readonly MassPoint[] {
  return ledger.cell(`mass points|${setup}|${glass}`, () => {
    return [...placeSetup(ledger, setup, glass).parts.values()].flatMap((placed) => {
      const massG = placed.part.figure('massG')?.value;
      return massG === undefined ? [] : [{ piece: placed.piece, massG, at: placed.centre ?? placed.at.t }];
    });
  });
}

/** The common centre of mass, and the mass; `undefined` where nothing weighs anything. */
export function centreOfMass(points: readonly MassPoint[]): { massG: number; at: Vector } | undefined {
  const massG = points.reduce((sum, one) => sum + one.massG, 0);
  if (massG <= 0) return undefined;
  return { massG, at: scale(points.map((one) => scale(one.at, one.massG)).reduce(add), 1 / massG) };
}
