import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { rigJoints } from '../placing/rigJoints.ts';
import type { Vector } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { convexOverlap } from './convexOverlap.ts';
import { type WorldSolid, convexParts, worldSolids } from './worldSolids.ts';

/** Two pieces of a build that are in one place. */
export interface Collision {
  readonly a: SetupPiece;
  readonly b: SetupPiece;
  /** About how deep, mm: the larger of the two must give way by so much. */
  readonly depthMm: number;
  /** Only at the end of the focus travel. */
  readonly withTravel: boolean;
  /** One of the shapes is a guess. */
  readonly coarse: boolean;
}

/** Parts may touch: what overlaps by less than this on either side is a fit, not a collision. */
const TOUCH_MM = 0.5;

/** Every pair of pieces that are in one place, at either end of the focus travel. Pieces that are joined or mesh are meant to touch. */
export function collisions(ledger: Ledger, setup: string, glass: string): readonly Collision[] {
  return ledger.cell(`collisions|${setup}|${glass}`, () => {
    const joined = joinedPairs(ledger, setup, glass);
    const solids = worldSolids(ledger, setup, glass).map((solid) => ({ solid, parts: convexParts(solid, -TOUCH_MM), travelled: solid.travelMm === 0 ? undefined : convexParts(solid, -TOUCH_MM, true) }));
    const boxed = solids.map((one) => ({ ...one, box: boxAround([...one.parts, ...(one.travelled ?? [])]) })).toSorted((a, b) => a.box.low[2] - b.box.low[2]);
    const found = new Map<string, Collision>();
    boxed.forEach((a, at) => {
      for (let other = at + 1; other < boxed.length; other += 1) {
        const b = boxed[other] as (typeof boxed)[number];
        if (b.box.low[2] > a.box.high[2]) break;
        const pair = pairKey(a.solid.piece.ref, b.solid.piece.ref);
        if (a.solid.piece.build !== b.solid.piece.build || a.solid.piece.ref === b.solid.piece.ref || joined.has(pair) || !boxesMeet(a.box, b.box)) continue;
        const still = meet(a.parts, b.parts);
        if (!still && !meet(a.travelled ?? a.parts, b.travelled ?? b.parts)) continue;
        const depthMm = depthOf(a.solid, b.solid, !still);
        if (depthMm > (found.get(pair)?.depthMm ?? 0)) found.set(pair, { a: a.solid.piece, b: b.solid.piece, depthMm, withTravel: !still, coarse: a.solid.coarse || b.solid.coarse });
      }
    });
    return [...found.values()].toSorted((one, two) => two.depthMm - one.depthMm);
  });
}

const pairKey = (a: string, b: string): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

function joinedPairs(ledger: Ledger, setup: string, glass: string): ReadonlySet<string> {
  return new Set(rigJoints(ledger, setup, glass).joints.map(({ a, b }) => pairKey(a.ref, b.ref)));
}

const meet = (a: readonly (readonly Vector[])[], b: readonly (readonly Vector[])[]): boolean => a.some((one) => b.some((other) => convexOverlap(one, other)));

/** Shrinks both until they part; what had to be taken off the two together is how deep they stood in each other. */
function depthOf(a: WorldSolid, b: WorldSolid, travelled: boolean): number {
  let [low, high] = [TOUCH_MM, 64];
  for (let step = 0; step < 8; step += 1) {
    const middle = (low + high) / 2;
    if (meet(convexParts(a, -middle, travelled), convexParts(b, -middle, travelled))) low = middle;
    else high = middle;
  }
  return low + high;
}

interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

function boxAround(parts: readonly (readonly Vector[])[]): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const corners of parts) {
    for (const corner of corners) {
      for (const axis of [0, 1, 2] as const) {
        low[axis] = Math.min(low[axis], corner[axis]);
        high[axis] = Math.max(high[axis], corner[axis]);
      }
    }
  }
  return { low, high };
}

const boxesMeet = (a: Box, b: Box): boolean => ([0, 1, 2] as const).every((axis) => a.low[axis] <= b.high[axis] && b.low[axis] <= a.high[axis]);
