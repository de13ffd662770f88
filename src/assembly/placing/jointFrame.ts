import type { SETTING_KEYS } from '../../shoot/schema/build.ts';
import type { Point } from '../../shoot/schema/mechanics.ts';
import { slidesAlongOut } from './mates.ts';
import { IDENTITY, type Transform, type Vector, add, compose, cross, dot, fromAxes, inverse, scale, subtract, turnX, turnZ, unit, multiply } from './Transform.ts';

/** Values of a joint's settings; those not named are zero. */
export type SettingValues = Partial<Record<(typeof SETTING_KEYS)[number], number>>;

/** The frame of a point in its part: z out of the part, y along `up`, x across. `undefined` where the point has no place. */
export function pointFrame({ at, out = [0, 0, 1], up = [0, 1, 0] }: Point): Transform | undefined {
  if (at === undefined) return undefined;
  const z = unit(out, [0, 0, 1]);
  const across = Math.abs(dot(unit(up, [0, 1, 0]), z)) > 0.999 ? leastAlong(z) : up;
  const y = unit(subtract(across, scale(z, dot(across, z))), [0, 1, 0]);
  return { r: fromAxes(cross(y, z), y, z), t: at };
}

/** The axis that lies least along a direction. */
function leastAlong(z: Vector): Vector {
  const size = z.map(Math.abs);
  if (size[0] === Math.min(...size)) return [1, 0, 0];
  return size[1] === Math.min(...size) ? [0, 1, 0] : [0, 0, 1];
}

/** Two points face each other: z against z, y along y. */
const FACING: Transform = { r: [-1, 0, 0, 0, 1, 0, 0, 0, -1], t: [0, 0, 0] };

/**
 * From the frame of point `a` to the frame of point `b` when they are joined: the points meet face to face, moved by the settings
 * in the frame of `a`: `sideMm` across, `slideMm` along `up` (along the rod on rods), `heightMm` out of the part, then
 * `turnDeg` about the way out and `tiltDeg` about the way across.
 */
export function jointTransform(a: Point, { sideMm = 0, slideMm = 0, heightMm = 0, turnDeg = 0, tiltDeg = 0 }: SettingValues): Transform {
  const along = slidesAlongOut(a.kind);
  const moved: Transform = { r: IDENTITY.r, t: [sideMm, along ? 0 : slideMm, heightMm + (along ? slideMm : 0)] };
  const turned: Transform = { r: multiply(turnZ(turnDeg), turnX(tiltDeg)), t: [0, 0, 0] };
  return compose(compose(moved, turned), FACING);
}

/** Where part B stands when its point `b` is joined to point `a` of a part that stands at `partA`. */
export function partAt(partA: Transform, frameA: Transform, joint: Transform, frameB: Transform): Transform {
  return compose(compose(compose(partA, frameA), joint), inverse(frameB));
}

/** Half way between two places. */
export const between = (a: Vector, b: Vector): Vector => scale(add(a, b), 0.5);
