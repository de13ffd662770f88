import type { Point } from '../../shoot/schema/mechanics.ts';
import { type SettingKey, axisOf } from '../mates.ts';
import { type Transform, type Vector, cross, dot, fromAxes, scale, subtract, unit } from './Transform.ts';

/** Values of a joint's settings; those not named are zero. */
export type SettingValues = Partial<Record<SettingKey, number>>;

/** The frame of a point in its part: z out of the part, y along `up`, x across. `undefined` where its place is not entered. */
export function pointFrame({ at, out, up = [0, 1, 0] }: Point): Transform | undefined {
  if (at === undefined || out === undefined) return undefined;
  const z = unit(out, [0, 0, 1]);
  const across = Math.abs(dot(unit(up, [0, 1, 0]), z)) > 0.999 ? leastAlong(z) : up;
  const y = unit(subtract(across, scale(z, dot(across, z))), [0, 1, 0]);
  return { r: fromAxes(cross(y, z), y, z), t: at };
}

/** The axis that lies least along a direction: up for what points level, forward for what points up or down. */
function leastAlong(z: Vector): Vector {
  const size = z.map(Math.abs);
  if (size[1] === Math.min(...size)) return [0, 1, 0];
  return size[2] === Math.min(...size) ? [0, 0, 1] : [1, 0, 0];
}

const DEG = Math.PI / 180;

/**
 * From the frame of point `a` to the frame of point `b`, joined: the points face each other, z against z, y along y; then `b` is moved
 * by the settings in the frame of `a` (`mates.ts` says which runs along what), turned by `turnDeg` about the way out, and tilted
 * by `tiltDeg` about the way across. Turns are anticlockwise seen from outside.
 */
export function jointTransform(kind: Point['kind'], settings: SettingValues): Transform {
  const t: [number, number, number] = [0, 0, 0];
  for (const key of ['slideMm', 'sideMm', 'heightMm'] as const) t[axisOf(kind, key)] += settings[key] ?? 0;
  const [turn, tilt] = [(settings.turnDeg ?? 0) * DEG, (settings.tiltDeg ?? 0) * DEG];
  const [c, s, d, e] = [Math.cos(turn), Math.sin(turn), Math.cos(tilt), Math.sin(tilt)];
  // Turn about z, tilt about x, half a turn about y.
  return { r: [-c, -s * d, -s * e, -s, c * d, c * e, 0, e, -d], t };
}
