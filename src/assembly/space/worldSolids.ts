import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Part } from '../../shoot/schema/part.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { type Transform, type Vector, add, apply, compose } from '../placing/Transform.ts';
import { type SetupPiece, setupPieces } from '../setupPieces.ts';
import { coarseSolids } from './coarseSolids.ts';

/** A solid of a piece as it stands. */
export interface WorldSolid {
  readonly piece: SetupPiece;
  readonly solid: Solid;
  /** Of the solid's own middle. */
  readonly place: Transform;
  /** The shape is a guess from the kind of part. */
  readonly coarse: boolean;
  /** How far it moves along the part's axis over the focus travel. */
  readonly travelMm: number;
}

/** All solids of a setup with one of its glasses; pieces of stations stand in their own build's frame. */
export function worldSolids(ledger: Ledger, setup: string, glass: string): readonly WorldSolid[] {
  return ledger.cell(`world solids|${setup}|${glass}`, () => {
    const pieces = setupPieces(ledger, setup, glass);
    return [...placeSetup(ledger, setup, glass).places].flatMap(([ref, place]) => {
      const piece = pieces.get(ref);
      return piece === undefined ? [] : pieceSolids(piece, place);
    });
  });
}

function pieceSolids(piece: SetupPiece, place: Transform): WorldSolid[] {
  const { part } = piece;
  const entered = part.read('solids') as readonly Solid[] | undefined;
  const solids = entered ?? coarseSolids(part.kind, part.read('points') as Part['points'], part.figure('lengthMm')?.value) ?? [];
  return solids.map((solid) => ({ piece, solid, place: compose(place, { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: solid.atMm ?? [0, 0, 0] }), coarse: entered === undefined, travelMm: travelOf(piece, solid) }));
}

function travelOf({ part }: SetupPiece, { moves }: Solid): number {
  if (moves === undefined) return 0;
  return (moves === 'with focus' ? part.figure('focus/gearTravelMm')?.value : part.figure('front/travelMm')?.value) ?? 0;
}

const SIDES = 24;

/** Corners of convex pieces that together are the solid, grown by `growMm` all round (less than zero: shrunk). */
export function convexParts({ solid, place, travelMm }: WorldSolid, growMm = 0, travelled = false): Vector[][] {
  const moved: Transform = travelled ? { r: place.r, t: add(place.t, [place.r[2] * travelMm, place.r[5] * travelMm, place.r[8] * travelMm]) } : place;
  return localParts(solid, growMm).map((corners) => corners.map((corner) => apply(moved, corner)));
}

function localParts(solid: Solid, grow: number): Vector[][] {
  if (solid.shape === 'box') {
    const [x, y, z] = solid.sizeMm.map((size) => Math.max(size / 2 + grow, 0.01)) as [number, number, number];
    return [[-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [i * x, j * y, k * z])))];
  }
  const half = Math.max(solid.lengthMm / 2 + grow, 0.01);
  const outer = Math.max(solid.diameterMm / 2 + grow, 0.01);
  const ring = (radius: number, at: number): Vector[] => {
    const angle = (2 * Math.PI * at) / SIDES;
    return [-half, half].map((along) => onAxis(solid.along, radius * Math.cos(angle), radius * Math.sin(angle), along));
  };
  const all = Array.from({ length: SIDES }, (_, at) => at);
  if (solid.shape === 'cylinder') return [all.flatMap((at) => ring(outer, at))];
  // The wall's pieces are flat inside: their middles touch the bore, so that what fits the bore is free.
  const bore = Math.min(Math.max(solid.boreMm / 2 - grow, 0.01) / Math.cos(Math.PI / SIDES), outer);
  return all.map((at) => [...ring(outer, at), ...ring(outer, at + 1), ...ring(bore, at), ...ring(bore, at + 1)]);
}

function onAxis(axis: 'x' | 'y' | 'z', a: number, b: number, along: number): Vector {
  if (axis === 'x') return [along, a, b];
  return axis === 'y' ? [a, along, b] : [a, b, along];
}
