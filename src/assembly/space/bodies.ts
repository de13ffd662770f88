import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type Transform, type Vector, add, axis, cross, dot, length, scale, subtract } from '../placing/Transform.ts';
import { convexOverlap } from './convexOverlap.ts';
import { type WorldSolid, convexParts, hullOf, worldSolids } from './worldSolids.ts';

export interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

/** Parts may touch: what overlaps by less than this on either side is a fit, not a collision. */
export const TOUCH_MM = 0.5;

/** A solid as it stands, less what counts as touching: what overlap is asked of. Corners are worked out when first asked for. */
export class Body {
  readonly world: WorldSolid;
  /** Where it goes with focus counts too. */
  readonly travelled: boolean;
  readonly box: Box;
  #hull: readonly Vector[] | undefined;
  #parts: readonly (readonly Vector[])[] | undefined;

  constructor(world: WorldSolid, travelled = false) {
    this.world = world;
    this.travelled = travelled;
    this.box = boxOf(world, travelled);
  }

  /** Corners of the solid without its bore. */
  get hull(): readonly Vector[] {
    return (this.#hull ??= hullOf(this.world, -TOUCH_MM, this.travelled));
  }

  /** Convex pieces that together are the solid. */
  get parts(): readonly (readonly Vector[])[] {
    return (this.#parts ??= this.world.solid.shape === 'tube' ? convexParts(this.world, -TOUCH_MM, this.travelled) : [this.hull]);
  }

  /** Whether a convex thing of such corners, with such a box around it, stands in it. */
  meets(corners: readonly Vector[], box: Box): boolean {
    if (!boxesMeet(this.box, box) || !convexOverlap(this.hull, corners)) return false;
    return this.world.solid.shape !== 'tube' || this.parts.some((part) => convexOverlap(part, corners));
  }

  overlaps(other: Body): boolean {
    return other.parts.some((part) => this.meets(part, other.world.solid.shape === 'tube' ? boxAround(part) : other.box));
  }
}

/** All solids of a setup, focus at infinity. */
export function bodies(ledger: Ledger, setup: string, glass: string): readonly Body[] {
  return ledger.cell(`bodies|${setup}|${glass}`, () => worldSolids(ledger, setup, glass).map((world) => new Body(world)));
}

/** About how deep two bodies stand in each other: the least shift that parts any two of their pieces, of the ways their own axes and middles suggest. */
export function depthOf(a: Body, b: Body): number {
  const ways = waysApart(a, b);
  const deep = a.parts.flatMap((one) => b.parts.filter((other) => convexOverlap(one, other)).map((other) => Math.min(...ways.map((way) => overlapAlong(one, other, way)))));
  return Math.max(0, ...deep) + 2 * TOUCH_MM;
}

function waysApart(a: Body, b: Body): Vector[] {
  const [one, other] = [a.world.place, b.world.place];
  const axes = ({ r }: Transform): Vector[] => [axis(r, 0), axis(r, 1), axis(r, 2)];
  const own = [...axes(one), ...axes(other)];
  const between = subtract(other.t, one.t);
  const across = own.map((along) => subtract(between, scale(along, dot(between, along))));
  const crossed = axes(one).flatMap((first) => axes(other).map((second) => cross(first, second)));
  return [...own, between, ...across, ...crossed].flatMap((way) => (length(way) < 1e-6 ? [] : [scale(way, 1 / length(way))]));
}

function overlapAlong(a: readonly Vector[], b: readonly Vector[], way: Vector): number {
  const reach = (corners: readonly Vector[]) => corners.map((corner) => dot(corner, way));
  const [one, other] = [reach(a), reach(b)];
  return Math.min(Math.max(...one) - Math.min(...other), Math.max(...other) - Math.min(...one));
}

/** The box around a solid, without working out its corners. */
function boxOf({ solid, place, travel }: WorldSolid, travelled: boolean): Box {
  const middle = travelled ? add(place.t, travel) : place.t;
  const half = solid.shape === 'box' ? solid.sizeMm : (['x', 'y', 'z'] as const).map((one) => (one === solid.along ? solid.lengthMm : solid.diameterMm));
  const reach = ([0, 1, 2] as const).map((at) => [0, 1, 2].reduce((sum, one) => sum + Math.abs(place.r[3 * at + one] as number) * Math.max(0, (half[one] as number) / 2 - TOUCH_MM), 0)) as unknown as Vector;
  return { low: subtract(middle, reach), high: add(middle, reach) };
}

export function boxAround(corners: readonly Vector[]): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const corner of corners) {
    for (const at of [0, 1, 2] as const) {
      if (corner[at] < low[at]) low[at] = corner[at];
      if (corner[at] > high[at]) high[at] = corner[at];
    }
  }
  return { low, high };
}

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.low[0] <= b.high[0] && b.low[0] <= a.high[0] && a.low[1] <= b.high[1] && b.low[1] <= a.high[1] && a.low[2] <= b.high[2] && b.low[2] <= a.high[2];
