import type { RigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { IDENTITY, type Vector, apply } from '../../assembly/placing/Transform.ts';
import { blockYaw } from '../../calc/mechanics/blockYaw.ts';
import type { Motion } from '../../calc/mechanics/network/Motion.ts';
import type { Asking } from '../Asking.ts';
import type { SetupGlass } from '../subjects.ts';
import { lensOf, squeezeOf } from './squeezeOf.ts';

/** How the picture of something far moves on the sensor, mm across (to camera left) and up, and what makes it. */
export interface SightShift {
  readonly across: number;
  readonly up: number;
  /** The taking lens shifts before the sensor. */
  readonly lens: readonly [across: number, up: number];
  /** A block turns to the side, f·θ·(1 − 1/q) against the lens's shift; that the taking lens turns with it does nothing. */
  readonly block: number;
  /** The camera itself pans and nods. */
  readonly frame: readonly [across: number, up: number];
}

/** What a motion of the rig does to the picture. `still` is a turn of all things together that does not count, deg: the ground of a rig that stands on nothing firm. */
export function sightLine(asking: Asking, { setup, glass }: SetupGlass, { bodyOf }: Pick<RigNetwork, 'bodyOf'>): (motion: Motion, still?: Vector) => SightShift {
  const path = opticalPath(asking.ledger, setup, glass);
  const lens = lensOf(path, glass);
  const body = path.body ?? lens;
  const focalLengthMm = asking.figure(lens.part, 'lens/focalLengthMm').value;
  const squeeze = squeezeOf(asking, { setup, glass }).value;
  const principal: Vector = apply(placeSetup(asking.ledger, setup, glass).places.get(body.ref) ?? IDENTITY, [0, 0, focalLengthMm]);
  const against = (motion: Motion, ref: string) => motion.relative({ of: bodyOf(ref), to: bodyOf(body.ref), atMm: principal });
  return (motion, still = [0, 0, 0]) => {
    const own = motion.turnDegOf(bodyOf(body.ref));
    const [nods, pans] = [rad(own[0] - still[0]), rad(own[1] - still[1])];
    const [across, up] = against(motion, lens.ref).shiftMm;
    const yawDeg = path.block === undefined ? 0 : against(motion, path.block.ref).turnDeg[1];
    const block = -blockYaw({ focalLengthMm, squeeze, yawDeg, pixelPitchMm: 1 }).shiftMm;
    const frame = [(focalLengthMm * pans) / squeeze, -focalLengthMm * nods] as const;
    return { across: across + block + frame[0], up: up + frame[1], lens: [across, up], block, frame };
  };
}

const rad = (deg: number): number => (deg * Math.PI) / 180;
