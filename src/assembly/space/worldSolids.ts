import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { PartView } from '../../shoot/ledger/PartView.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { shapeOf } from '../coarseShape.ts';
import { opticalPath } from '../opticalPath.ts';
import type { PlacedPart } from '../placing/PlacedPart.ts';
import { type Placement, placeSetup } from '../placing/placeSetup.ts';
import { IDENTITY, type Transform, type Vector, add, apply, axis, compose, length, scale, unit } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';

/** A solid of a piece as it stands; packs count to the plate they are on. */
export interface WorldSolid {
  readonly piece: SetupPiece;
  readonly solid: Solid;
  /** Of the solid's own middle. */
  readonly place: Transform;
  /** The shape is a guess from the kind of part. */
  readonly coarse: boolean;
  /** Where it goes as focus runs from infinity to close. */
  readonly travel: Vector;
  readonly travelMm: number;
}

/** All solids of a setup with one of its glasses; pieces of stations stand in their own build's frame. */
export function worldSolids(ledger: Ledger, setup: string, glass: string): readonly WorldSolid[] {
  return ledger.cell(`world solids|${setup}|${glass}`, () => {
    const placement = placeSetup(ledger, setup, glass);
    const carried = carriedAlong(ledger, placement);
    const focused = opticalPath(ledger, setup, glass).focusedBy?.ref;
    return [...placement.parts.values()].flatMap((placed) => partSolids(placed, carried.get(placed.piece.ref) ?? STILL, placed.ref === focused));
  });
}

const STILL: Vector = [0, 0, 0];

function partSolids({ part, piece, at }: PlacedPart, carried: Vector, focuses: boolean): WorldSolid[] {
  const { solids, coarse } = shapeOf(part);
  const own = focuses ? travelling(part, solids) : new Map<Solid, number>();
  return solids.map((solid) => {
    const travel = add(carried, scale(axis(at.r, 2), own.get(solid) ?? 0));
    return { piece, solid, coarse, place: compose(at, { r: [1, 0, 0, 0, 1, 0, 0, 0, 1], t: solid.atMm ?? [0, 0, 0] }), travel, travelMm: length(travel) };
  });
}

/** How far each solid of what is focused moves: as it says, else the foremost one where the front travels and none says that it does. */
function travelling(part: PartView, solids: readonly Solid[]): ReadonlyMap<Solid, number> {
  const [gear, front] = [part.figure('focus/gearTravelMm')?.value ?? 0, part.figure('front/travelMm')?.value ?? 0];
  const stated = solids.filter(({ moves }) => moves !== undefined);
  if (stated.length > 0) return new Map(stated.map((solid) => [solid, solid.moves === 'with focus' ? gear : front]));
  const foremost = solids.toSorted((a, b) => (b.atMm?.[2] ?? 0) - (a.atMm?.[2] ?? 0))[0];
  return foremost === undefined || front === 0 ? new Map() : new Map([[foremost, front]]);
}

/** What sits on a front that travels with focus goes along, and so does all that hangs on it. */
function carriedAlong(ledger: Ledger, { setup, glass, model, places }: Placement): ReadonlyMap<string, Vector> {
  const focused = opticalPath(ledger, setup, glass).focusedBy;
  const travel = focused?.part.figure('front/travelMm')?.value ?? 0;
  const carried = new Map<string, Vector>();
  if (focused === undefined || travel === 0) return carried;
  const along = scale(axis((places.get(focused.ref) ?? IDENTITY).r, 2), travel);
  for (const { joint, parent, child, flipped } of model.tree) {
    const on = flipped ? joint.b : joint.a;
    const own = parent === focused.ref && on.point.kind === 'front' && unit(on.point.out ?? [0, 0, 0], [0, 0, 0])[2] > 0.5 ? along : undefined;
    const moved = own ?? carried.get(parent);
    if (moved !== undefined) carried.set(child, moved);
  }
  return carried;
}

const SIDES = 24;
/** Round the axis and back to where it began. */
const ANGLES = Array.from({ length: SIDES + 1 }, (_, at) => (2 * Math.PI * at) / SIDES);
const COSINES = ANGLES.map(Math.cos);
const SINES = ANGLES.map(Math.sin);

/** Corners of convex pieces that together are the solid, grown by `growMm` all round (less than zero: shrunk). */
export function convexParts({ solid, place, travel }: WorldSolid, growMm = 0, travelled = false): Vector[][] {
  const moved: Transform = travelled ? { r: place.r, t: add(place.t, travel) } : place;
  return localParts(solid, growMm).map((corners) => corners.map((corner) => apply(moved, corner)));
}

/** The solids of a setup by the corners of their hulls. */
export function worldHulls(ledger: Ledger, setup: string, glass: string): ReadonlyMap<WorldSolid, readonly Vector[]> {
  return ledger.cell(`world hulls|${setup}|${glass}`, () => new Map(worldSolids(ledger, setup, glass).map((solid) => [solid, hullOf(solid)])));
}

/** Corners of a solid as if it had no bore. */
export function hullOf(world: WorldSolid, growMm = 0, travelled = false): Vector[] {
  const { solid } = world;
  const whole: Solid = solid.shape === 'tube' ? { shape: 'cylinder', diameterMm: solid.diameterMm, lengthMm: solid.lengthMm, along: solid.along } : solid;
  return convexParts({ ...world, solid: whole }, growMm, travelled)[0] ?? [];
}

function localParts(solid: Solid, grow: number): Vector[][] {
  if (solid.shape === 'box') {
    const [x, y, z] = solid.sizeMm.map((size) => Math.max(size / 2 + grow, 0.01)) as [number, number, number];
    return [[-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [i * x, j * y, k * z])))];
  }
  const half = Math.max(solid.lengthMm / 2 + grow, 0.01);
  const outer = Math.max(solid.diameterMm / 2 + grow, 0.01);
  const ring = (corners: Vector[], radius: number, at: number): Vector[] => {
    const a = radius * COSINES[at]!;
    const b = radius * SINES[at]!;
    corners.push(onAxis(solid.along, a, b, -half), onAxis(solid.along, a, b, half));
    return corners;
  };
  if (solid.shape === 'cylinder') {
    const corners: Vector[] = [];
    for (let at = 0; at < SIDES; at += 1) ring(corners, outer, at);
    return [corners];
  }
  // The wall's pieces are flat inside: their middles touch the bore, so that what fits the bore is free.
  const bore = Math.min(Math.max(solid.boreMm / 2 - grow, 0.01) / Math.cos(Math.PI / SIDES), outer);
  return Array.from({ length: SIDES }, (_, at) => ring(ring(ring(ring([], outer, at), outer, at + 1), bore, at), bore, at + 1));
}

function onAxis(axis: 'x' | 'y' | 'z', a: number, b: number, along: number): Vector {
  if (axis === 'x') return [along, a, b];
  return axis === 'y' ? [a, along, b] : [a, b, along];
}
