import { liftingLimit } from '../../calc/mechanics/liftingLimit.ts';
import type { COUPLING_MULTIPLIERS } from '../../standards/liftingTables.ts';
import { REACH } from '../../standards/liftingReach.ts';

export type Grip = keyof typeof COUPLING_MULTIPLIERS;

/** Something lifted once by one person with both hands. */
export interface Lifting {
  readonly massG: number;
  /** Height of the hands when it is picked up, and when it is set down. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Its depth from the side where one stands. */
  readonly acrossMm: number;
  readonly grip: Grip;
  readonly twistDeg?: number;
}

export interface OneLift {
  /** The most that should be lifted so; 0 where it should not be lifted so at all. */
  readonly limitG: number;
  /** Mass over that limit. */
  readonly index: number;
  readonly pickedUpG: number;
  readonly setDownG: number;
  readonly worse: 'picking it up' | 'setting it down';
}

/**
 * The recommended weight limit at both ends of a lift, the lower one counts: a camera is set down with care, on a head or a
 * shoulder, and for that the manual asks for the end too. A few lifts an hour, so that how often it is done takes nothing off.
 */
export function oneLift({ massG, fromMm, toMm, acrossMm, grip, twistDeg = 0 }: Lifting): OneLift {
  const limitAt = (handsMm: number) => liftingLimit({
    massG, horizontalMm: (handsMm < REACH.lowBelowMm ? REACH.lowMm : REACH.highMm) + acrossMm / 2, verticalMm: Math.max(0, handsMm), travelMm: Math.abs(toMm - fromMm),
    asymmetryDeg: twistDeg, coupling: grip, liftsPerMin: 0, durationH: 1,
  }).limitG;
  const [pickedUpG, setDownG] = [limitAt(fromMm), limitAt(toMm)];
  const limitG = Math.min(pickedUpG, setDownG);
  return { limitG, index: massG / limitG, pickedUpG, setDownG, worse: setDownG < pickedUpG ? 'setting it down' : 'picking it up' };
}
