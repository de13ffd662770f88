import { opticalPath } from '../../assembly/opticalPath.ts';
import type { PullGiven } from '../../calc/focus/pull/given.ts';
import { WHOLE_STOPS } from '../../standards/wholeStops.ts';
import type { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { type ShotSubject, glassesOf } from '../subjects.ts';
import { shotStop, widestStop } from './lightThrough.ts';
import type { PullPlan } from './pullGiven.ts';

type WhatIf = NonNullable<PullGiven['whatIf']>;

/** Other values worth trying on a shot, axis by axis: those that its way of pulling uses, the planned one among them. */
export function pullAxes(asking: Asking, subject: ShotSubject, plan: PullPlan, trials: number): WhatIf {
  const { given, way, sees, modes } = plan;
  const byPicture = sees && (way === 'picture' || way === 'both');
  const moves = given.keyframes.some(({ distanceMm }, at) => at > 0 && distanceMm !== given.keyframes[at - 1]?.distanceMm);
  return {
    trials,
    ...(byPicture ? { pictureDelaysMs: withOwn([0, 40, 80, 120, 160, 240], given.pictureDelayMs) } : {}),
    fNumbers: stops(asking, subject, given),
    focalLengthsMm: focalLengths(asking, subject, given),
    ...(moves ? { speeds: [0.5, 0.75, 1, 1.25, 1.5] } : {}),
    ...(moves && (way === 'marks' || way === 'both') ? { marksPerMove: withOwn([0, 1, 2, 4, 8], given.marksPerMove) } : {}),
    ...(byPicture && modes.length > 1 ? { modes: modes.map(({ name, pictureDelayMs, visibleBlurMm }) => ({ name, pictureDelayMs, visibleBlurMm })) } : {}),
  };
}

const withOwn = (values: readonly number[], own: number): number[] => [...values.filter((value) => Math.abs(value - own) > 0.05 * Math.max(1, own)), own].toSorted((a, b) => a - b);

/** Whole T-stops about the planned one that the glass opens to, as f-numbers. */
function stops(asking: Asking, subject: ShotSubject, given: PullGiven): number[] {
  const planned = shotStop(asking, subject.shot);
  const perT = given.fNumber / planned;
  const widest = widestT(asking, subject);
  const near = WHOLE_STOPS.filter((t) => t >= Math.max(widest * 0.99, planned / 2.1) && t <= planned * 4.1);
  return withOwn(near, planned).map((t) => t * perT);
}

function widestT(asking: Asking, subject: ShotSubject): number {
  try {
    return widestStop(asking, subject).tNumber.value;
  } catch (thrown) {
    if (thrown instanceof NotEntered) return 0;
    throw thrown;
  }
}

/** Those of the other lenses of the setup; where there are none, half and twice as long. What is too long for the nearest mark is left out. */
function focalLengths(asking: Asking, { setup }: ShotSubject, given: PullGiven): number[] {
  const ofSet = glassesOf(asking.ledger, setup).flatMap((glass) => opticalPath(asking.ledger, setup, glass).lens?.part.figure('lens/focalLengthMm')?.value ?? []);
  const different = new Set(ofSet);
  const others = different.size > 1 ? [...different] : [given.focalLengthMm / 2, given.focalLengthMm * 2];
  const nearestMm = Math.min(...given.scale.map(({ distanceMm }) => distanceMm));
  const longest = given.focuserToSensorMm === undefined ? nearestMm / 4 : Infinity;
  return withOwn(others, given.focalLengthMm).filter((focalLengthMm) => focalLengthMm <= longest || focalLengthMm === given.focalLengthMm);
}
