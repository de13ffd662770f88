import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Vector } from '../placing/Transform.ts';
import { type WorldSolid, convexParts, worldSolids } from './worldSolids.ts';

/** A convex piece of a solid as it stands, with the box around it: what overlap is asked of. */
export interface Body {
  readonly world: WorldSolid;
  readonly corners: readonly Vector[];
  readonly box: Box;
}

export interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

/** Parts may touch: what overlaps by less than this on either side is a fit, not a collision. */
export const TOUCH_MM = 0.5;

/** All convex pieces of a setup's solids, less what counts as touching. */
export function bodies(ledger: Ledger, setup: string, glass: string): readonly Body[] {
  return ledger.cell(`bodies|${setup}|${glass}`, () => worldSolids(ledger, setup, glass).flatMap((world) => convexParts(world, -TOUCH_MM).map((corners) => ({ world, corners, box: boxAround(corners) }))));
}

export function boxAround(corners: readonly Vector[]): Box {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const corner of corners) {
    for (const axis of [0, 1, 2] as const) {
      if (corner[axis] < low[axis]) low[axis] = corner[axis];
      if (corner[axis] > high[axis]) high[axis] = corner[axis];
    }
  }
  return { low, high };
}

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.low[0] <= b.high[0] && b.low[0] <= a.high[0] && a.low[1] <= b.high[1] && b.low[1] <= a.high[1] && a.low[2] <= b.high[2] && b.low[2] <= a.high[2];
