import type { PullGiven } from './given.ts';
import { MINIMUM_JERK_PEAK, minimumJerk } from './minimumJerk.ts';

/** Where in the plan a moment lies: on the way from keyframe `from` to the next, `share` of that way done. */
export interface PlanMoment {
  readonly from: number;
  readonly share: number;
}

type Keyframes = PullGiven['keyframes'];

/** The plan at a time; before the first keyframe and after the last the share is 0. */
export function planAt(keyframes: Keyframes, atS: number, startAt = 0): PlanMoment {
  let from = startAt;
  while (from + 1 < keyframes.length && keyframes[from + 1]!.atS <= atS) from += 1;
  const start = keyframes[from]!;
  const end = keyframes[from + 1];
  if (end === undefined || atS <= start.atS) return { from, share: 0 };
  const part = (atS - start.atS) / (end.atS - start.atS);
  return { from, share: end.by === 'steady' ? part : minimumJerk(part) };
}

/** The subject at each frame as planned. In a rack the new subject counts from its start on, but is judged only after its end. */
export interface SubjectPlan {
  readonly frames: number;
  readonly distanceMm: Float64Array;
  /** The keyframe a miss is weighed from, and how much of the next one's miss counts. */
  readonly keyframe: Uint16Array;
  readonly share: Float64Array;
  readonly judged: Uint8Array;
}

export function subjectPlan(keyframes: Keyframes, frames: number, frameRateHz: number): SubjectPlan {
  const plan: SubjectPlan = {
    frames,
    distanceMm: new Float64Array(frames),
    keyframe: new Uint16Array(frames),
    share: new Float64Array(frames),
    judged: new Uint8Array(frames),
  };
  let from = 0;
  for (let frame = 0; frame < frames; frame++) {
    const moment = planAt(keyframes, frame / frameRateHz, from);
    from = moment.from;
    const start = keyframes[from]!;
    const end = keyframes[from + 1] ?? start;
    const racking = end.by === 'rack' && end !== start && frame / frameRateHz > start.atS;
    plan.keyframe[frame] = from;
    plan.share[frame] = racking ? 1 : moment.share;
    plan.distanceMm[frame] = racking ? end.distanceMm : between(start.distanceMm, end.distanceMm, moment.share);
    plan.judged[frame] = racking ? 0 : 1;
  }
  return plan;
}

/** The fastest the ring has to turn to follow the plan, in degrees a second. */
export function fastestWantedDegPerS(keyframes: Keyframes, angleAt: (distanceMm: number) => number): number {
  let fastest = 0;
  for (let i = 1; i < keyframes.length; i++) {
    const start = keyframes[i - 1]!;
    const end = keyframes[i]!;
    const duration = end.atS - start.atS;
    if (end.by === 'rack') {
      fastest = Math.max(fastest, (MINIMUM_JERK_PEAK * Math.abs(angleAt(end.distanceMm) - angleAt(start.distanceMm))) / duration);
    } else {
      fastest = Math.max(fastest, fastestInMove(start.distanceMm, end.distanceMm, duration, end.by === 'steady', angleAt));
    }
  }
  return fastest;
}

const PARTS = 400; // of a move, to find its fastest: the peak is flat, so that 1/400 errs by less than 1e-4

function fastestInMove(startMm: number, endMm: number, durationS: number, steady: boolean, angleAt: (distanceMm: number) => number): number {
  let before = angleAt(startMm);
  let widest = 0;
  for (let part = 1; part <= PARTS; part++) {
    const share = steady ? part / PARTS : minimumJerk(part / PARTS);
    const angle = angleAt(between(startMm, endMm, share));
    widest = Math.max(widest, Math.abs(angle - before));
    before = angle;
  }
  return (widest * PARTS) / durationS;
}

/** Along the axis; two equal ends stay exactly there, infinity too. */
function between(startMm: number, endMm: number, share: number): number {
  return startMm === endMm || share === 0 ? startMm : startMm + (endMm - startMm) * share;
}
