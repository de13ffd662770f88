import { NoAnswer } from '../../calculator.ts';
import { distanceAheadOf, objectDistanceFromSensor } from '../../optics/thinLens.ts';
import { focusScale } from '../focusScale.ts';
import { inMm } from '../overDistance.ts';
import type { PullGiven } from './given.ts';
import { framesOf, stepsPerFrameOf } from './shot.ts';

/** More steps than this in one take would not fit in memory beside others. */
const MOST_STEPS = 4_000_000;

/** Throws `NoAnswer` where inputs that are each in range do not make a shot together. */
export function checkShot(given: PullGiven): void {
  checkWhole(given);
  checkScale(given);
  checkKeyframes(given);
  checkLength(given);
}

function checkWhole(given: PullGiven): void {
  for (const key of ['seed', 'trials', 'marksPerMove'] as const) {
    if (!Number.isInteger(given[key])) throw new NoAnswer(key, `Found ${given[key]}; it must be a whole number.`);
  }
}

function checkScale({ scale, focalLengthMm, focuserToSensorMm }: PullGiven): void {
  const { nearMm } = focusScale(scale, 'scale');
  const path = `scale/${scale.findIndex((mark) => mark.distanceMm === nearMm)}/distanceMm`;
  if (focuserToSensorMm === undefined) {
    objectDistanceFromSensor(focalLengthMm, nearMm, path);
  } else {
    distanceAheadOf('focuser', { toSensorMm: focuserToSensorMm, distanceMm: nearMm }, path);
  }
}

function checkKeyframes({ keyframes, scale, seconds }: PullGiven): void {
  const { nearMm, farMm } = focusScale(scale, 'scale');
  keyframes.forEach(({ atS, distanceMm, by }, i) => {
    const before = keyframes[i - 1];
    if (before !== undefined && atS <= before.atS) {
      throw new NoAnswer(`keyframes/${i}/atS`, `Found ${atS} s after ${before.atS} s; keyframes go forward in time.`);
    }
    if (atS > seconds) throw new NoAnswer(`keyframes/${i}/atS`, `Found ${atS} s in a shot of ${seconds} s; lengthen the shot or drop the keyframe.`);
    if (distanceMm < nearMm || distanceMm > farMm) {
      throw new NoAnswer(
        `keyframes/${i}/distanceMm`, `Found ${inMm(distanceMm)}; the marks of the scale run from ${inMm(nearMm)} to ${inMm(farMm)}.`,
      );
    }
    const toOrFromInfinity = before !== undefined && (distanceMm === Infinity) !== (before.distanceMm === Infinity);
    if (toOrFromInfinity && by !== 'rack') {
      throw new NoAnswer(
        `keyframes/${i}/by`, `Nobody walks to or from infinity: from ${inMm(before.distanceMm)} to ${inMm(distanceMm)} it must be a rack.`,
      );
    }
  });
}

function checkLength(given: PullGiven): void {
  if (given.stepMs > (1000 / given.frameRateHz) * (1 + 1e-9)) {
    throw new NoAnswer('stepMs', `Found ${given.stepMs} ms; a step can be no longer than a frame, ${1000 / given.frameRateHz} ms.`);
  }
  const steps = framesOf(given) * stepsPerFrameOf(given);
  if (steps > MOST_STEPS) {
    const cure = 'Take a longer step or a shorter shot.';
    throw new NoAnswer('seconds', `A take of ${given.seconds} s has ${steps} steps; at most ${MOST_STEPS} fit. ${cure}`);
  }
  if (given.whatIf !== undefined && given.whatIf.trials > given.trials) {
    throw new NoAnswer(
      'whatIf/trials', `Found ${given.whatIf.trials}; the variants are compared with the ${given.trials} takes as planned, so no more than those.`,
    );
  }
}
