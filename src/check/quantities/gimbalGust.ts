import { type Vector, add, cross, scale, subtract } from '../../assembly/placing/Transform.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import type { GimbalLoad } from './gimbalLoad.ts';
import { WAYS, directionOf } from './gimbalReach.ts';
import { type Air, type WindOn, airPast, windMoment, windOn } from './windOn.ts';

/** A gust on all that turns with the camera in a gimbal, level, from the worst side for each axis. */
export interface GimbalGust {
  readonly air: Air;
  /** The widest view of it, and the push on that. */
  readonly areaMm2: number;
  readonly forceN: number;
  /** What the motor of an axis must hold against it, N·m; `movedMm`: the camera moved in the gimbal, to camera left, up, ahead. */
  readonly about: (axis: GimbalAxis, movedMm?: Vector) => number;
}

export type GimbalAxis = 'tilt' | 'roll' | 'pan';

/** Tilt turns about the way across the camera, pan about the way up, roll about the way along. */
const WAY_OF: Readonly<Record<GimbalAxis, (typeof WAYS)[number]>> = { tilt: WAYS[0], pan: WAYS[1], roll: WAYS[2] };

/** `undefined`: no wind gets at it, or nothing of it has a shape. */
export function gimbalGust(asking: Asking, subject: SetupGlass, { gimbal, turning, axesMm, turn }: GimbalLoad): GimbalGust | undefined {
  const air = airPast(asking, subject.setup);
  if (air === undefined) return undefined;
  const pushes = windOn(asking, subject, { air, refs: turning, key: `turning in ${gimbal.ref}` });
  const widest = pushes.reduce<WindOn | undefined>((most, one) => (most === undefined || one.forceN > most.forceN ? one : most), undefined);
  if (widest === undefined) return undefined;
  const ways = [directionOf(turn, WAYS[0], 1), directionOf(turn, WAYS[1], 1), directionOf(turn, WAYS[2], 1)] as const;
  const inBuild = ([left, up, ahead]: Vector): Vector => add(scale(ways[0], left), add(scale(ways[1], up), scale(ways[2], ahead)));
  const about = (axis: GimbalAxis, movedMm: Vector = [0, 0, 0]): number => {
    const along = ways[WAY_OF[axis].at];
    const from = subtract(axesMm, inBuild(movedMm));
    return Math.max(...pushes.map((push) => windMoment(push, (place) => cross(along, subtract(place, from)))));
  };
  return { air, areaMm2: widest.areaMm2, forceN: widest.forceN, about };
}
