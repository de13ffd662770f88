import { PURPOSE, normal } from './counterRandom.ts';
import type { PullGiven } from './given.ts';
import { type RingScale, angleOfDistance, distanceOfAngle } from './ringScale.ts';
import { planAt } from './subject.ts';

/**
 * The hand that knows its marks. Between two marks it turns in proportion to how far the subject has come between them, as
 * one does who watches the floor and not the screen; in a rack it makes a minimum-jerk move. Each mark has its error of
 * measuring (kept for the shot) and of landing (new each visit); each end of a move is early or late.
 */
export interface HandPlan {
  /** The marks in the order they are passed. */
  readonly marks: readonly MarkOnTheWay[];
  /** Which mark in `marks` each keyframe is. */
  readonly markOfKeyframe: readonly number[];
  /** Per step, as planned: the mark behind plus the share of the way to the next. */
  readonly position: Float64Array;
}

interface MarkOnTheWay {
  readonly distanceMm: number;
  readonly angleDeg: number;
  /** The same for the same place. */
  readonly place: number;
  /** The same while one stays there. */
  readonly visit: number;
  readonly stop: 'low' | 'high' | undefined;
}

const KEYS = 128; // marks have keys of their own, so that adding some leaves the draws of the others alone

/** Plan for a shot of `steps` steps. Two hard stops leave no marks between. */
export function handPlan(given: PullGiven, scale: RingScale, steps: number, stepS: number): HandPlan {
  const { marks, markOfKeyframe } = marksOnTheWay(given, scale);
  const position = new Float64Array(steps);
  let from = 0;
  for (let n = 0; n < steps; n++) {
    const moment = planAt(given.keyframes, n * stepS, from);
    from = moment.from;
    position[n] = positionBetween(given, marks, markOfKeyframe, from, moment.share);
  }
  return { marks, markOfKeyframe, position };
}

/** What changes from take to take: the angle at each mark, when each keyframe is met, the hand's path. */
export interface HandTake {
  readonly angleDeg: Float64Array;
  readonly metAtS: Float64Array;
  readonly pathDeg: Float64Array;
}

export const handTake = (plan: HandPlan): HandTake => ({
  angleDeg: new Float64Array(plan.marks.length),
  metAtS: new Float64Array(plan.markOfKeyframe.length),
  pathDeg: new Float64Array(plan.position.length),
});

/** Draws one take and lays out its path; the hand has learnt to lead by the lag of its motor and its link. */
export function drawHand(plan: HandPlan, take: HandTake, given: PullGiven, scale: RingScale, stepS: number, trial: number): void {
  drawAngles(plan, take, given, scale, trial);
  drawTimes(take, given, stepS, trial);
  layPath(plan, take, given.keyframes, stepS);
}

function drawAngles(plan: HandPlan, take: HandTake, given: PullGiven, scale: RingScale, trial: number): void {
  for (let i = 0; i < plan.marks.length; i++) {
    const { distanceMm, angleDeg, place, visit, stop } = plan.marks[i]!;
    let angle = angleDeg;
    if (stop !== undefined) {
      if (given.stopErrorDeg > 0) angle += given.stopErrorDeg * normal(given.seed, trial, PURPOSE.stop, stop === 'low' ? 0 : 1);
    } else {
      if (given.markErrorMm > 0) {
        angle = angleOfDistance(scale, distanceMm + given.markErrorMm * normal(given.seed, trial, PURPOSE.tape, place));
      }
      if (given.markErrorDeg > 0) angle += given.markErrorDeg * normal(given.seed, trial, PURPOSE.landing, visit);
    }
    take.angleDeg[i] = Math.min(scale.highDeg, Math.max(scale.lowDeg, angle));
  }
}

/** The shortest a move can become when begun late and ended early, as a share of its planned time. */
const SHORTEST = 0.2;

function drawTimes({ metAtS }: HandTake, { keyframes, seed, timingSpreadMs, lateMs, motorLagMs }: PullGiven, stepS: number, trial: number): void {
  // A command is carried out by the end of its step.
  const shiftS = (lateMs - motorLagMs) / 1000 - stepS;
  for (let i = 0; i < keyframes.length; i++) {
    const planned = keyframes[i]!.atS;
    const slip = timingSpreadMs > 0 ? (timingSpreadMs / 1000) * normal(seed, trial, PURPOSE.timing, i) : 0;
    const earliest = i === 0 ? -Infinity : metAtS[i - 1]! + SHORTEST * (planned - keyframes[i - 1]!.atS);
    metAtS[i] = Math.max(planned + shiftS + slip, earliest);
  }
}

function layPath({ position }: HandPlan, { metAtS, angleDeg, pathDeg }: HandTake, keyframes: PullGiven['keyframes'], stepS: number): void {
  const steps = position.length;
  let n = 0;
  for (let move = -1; move < metAtS.length; move++) {
    const start = keyframes[Math.max(move, 0)]!.atS;
    const end = keyframes[Math.min(move + 1, metAtS.length - 1)]!.atS;
    const metStart = metAtS[Math.max(move, 0)]!;
    const until = move + 1 < metAtS.length ? metAtS[move + 1]! : Infinity;
    // Before the first keyframe and after the last the hand rests: a pace of zero.
    const pace = move >= 0 && move + 1 < metAtS.length ? (end - start) / (until - metStart) : 0;
    for (; n < steps && n * stepS < until; n++) {
      const planned = Math.min(Math.max((start + (n * stepS - metStart) * pace) / stepS, 0), steps - 1);
      pathDeg[n] = between(angleDeg, between(position, planned));
    }
  }
}

/** A list at a place between its entries. */
function between(list: Float64Array, at: number): number {
  const before = at | 0;
  const value = list[before]!;
  return before + 1 < list.length ? value + (list[before + 1]! - value) * (at - before) : value;
}

function marksOnTheWay(given: PullGiven, scale: RingScale): Pick<HandPlan, 'marks' | 'markOfKeyframe'> {
  const angles = given.keyframes.map(({ distanceMm }) => angleOfDistance(scale, distanceMm));
  const low = Math.min(...angles);
  const high = Math.max(...angles);
  const stopAt = (angle: number) => (given.way !== 'stops' ? undefined : angle === low ? 'low' : angle === high ? 'high' : undefined);
  const marks: MarkOnTheWay[] = [];
  const markOfKeyframe: number[] = [];
  const places = new Map<number, number>();
  const add = (distanceMm: number, angleDeg: number, key: number) => {
    const last = marks.at(-1);
    const spot = Math.round(distanceMm * 1000); // the way back meets the same marks, but for rounding
    if (!places.has(spot)) places.set(spot, key);
    const visit = last?.distanceMm === distanceMm ? last.visit : key;
    marks.push({ distanceMm, angleDeg, place: places.get(spot)!, visit, stop: stopAt(angleDeg) });
  };
  given.keyframes.forEach(({ distanceMm, by }, i) => {
    const from = angles[i - 1];
    const between = i === 0 || by === 'rack' || given.way === 'stops' || from === angles[i] ? 0 : Math.round(given.marksPerMove);
    for (let j = 1; j <= between; j++) {
      const angle = from! + ((angles[i]! - from!) * j) / (between + 1);
      add(distanceOfAngle(scale, angle), angle, i * KEYS + j);
    }
    markOfKeyframe.push(marks.length);
    add(distanceMm, angles[i]!, i * KEYS);
  });
  return { marks, markOfKeyframe };
}

function positionBetween(
  { keyframes }: PullGiven, marks: HandPlan['marks'], markOfKeyframe: readonly number[], keyframe: number, share: number,
): number {
  const first = markOfKeyframe[keyframe]!;
  const last = markOfKeyframe[keyframe + 1];
  const end = keyframes[keyframe + 1];
  if (last === undefined || end === undefined || share === 0) return first;
  const start = keyframes[keyframe]!;
  if (end.by === 'rack' || start.distanceMm === end.distanceMm) return first + share;
  const distance = start.distanceMm + (end.distanceMm - start.distanceMm) * share;
  const nearing = end.distanceMm < start.distanceMm;
  let behind = first;
  while (behind + 1 < last && (nearing ? marks[behind + 1]!.distanceMm > distance : marks[behind + 1]!.distanceMm < distance)) behind += 1;
  const from = marks[behind]!.distanceMm;
  return behind + Math.min(1, Math.max(0, (distance - from) / (marks[behind + 1]!.distanceMm - from)));
}
