import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Vector, add, apply, scale } from '../placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { worldSolids } from './worldSolids.ts';

/** A piece as a mass at a place, in the frame of its build. */
export interface MassPoint {
  readonly piece: SetupPiece;
  readonly massG: number;
  readonly at: Vector;
}

/** Every placed piece of a setup whose mass is known: at its stated centre, else in the middle of its solids. */
export function massPoints(ledger: Ledger, setup: string, glass: string): readonly MassPoint[] {
  return ledger.cell(`mass points|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    const solids = worldSolids(ledger, setup, glass);
    return [...placeSetup(ledger, setup, glass).places].flatMap(([ref, place]) => {
      const piece = pieces.get(ref);
      const massG = piece?.part.figure('massG')?.value;
      if (piece === undefined || massG === undefined) return [];
      const centre = piece.part.read('centreMm') as Vector | undefined;
      const own = solids.filter((solid) => solid.piece.ref === ref).map((solid) => solid.place.t);
      const at = centre === undefined ? (own.length === 0 ? place.t : scale(own.reduce(add), 1 / own.length)) : apply(place, centre);
      return [{ piece, massG, at }];
    });
  });
}

/** The common centre of mass, and the mass; `undefined` where nothing weighs anything. */
export function centreOfMass(points: readonly MassPoint[]): { massG: number; at: Vector } | undefined {
  const massG = points.reduce((sum, one) => sum + one.massG, 0);
  if (massG <= 0) return undefined;
  return { massG, at: scale(points.map((one) => scale(one.at, one.massG)).reduce(add), 1 / massG) };
}
