import { PURPOSE, normal } from './counterRandom.ts';
import { CORRECTION, MOTOR, RING, SPEED, runDrive } from './drive.ts';
import { type FrameLog, errorSeen, freshMind } from './eye.ts';
import { blurAt } from './focusBlur.ts';
import type { PullGiven } from './given.ts';
import { drawHand } from './hand.ts';
import { angleOfVergence } from './ringScale.ts';
import type { Shot } from './shot.ts';
import { drawSway, swayAt } from './sway.ts';
import { BINS, type Tally, binOf, emptyTally } from './tally.ts';

/** Runs trials [from, to). The same trial gives the same take, whoever runs it and whatever ran before. */
export function runTakes(shot: Shot, from: number, to: number, withBands: boolean): Tally {
  const tally = emptyTally(from, to - from, shot.frames, withBands);
  for (let trial = from; trial < to; trial++) {
    runTake(shot, trial);
    judgeTake(shot, tally, trial - from);
  }
  return tally;
}

/** One take, frame by frame: what the ring should have been, was, and the blur. */
export function oneTake(shot: Shot, trial: number): FrameLog {
  runTake(shot, trial);
  const { wantedDeg, ringDeg, blurMm, vergence } = shot.take.log;
  return { wantedDeg: wantedDeg.slice(), ringDeg: ringDeg.slice(), blurMm: blurMm.slice(), vergence: vergence.slice() };
}

/** The whole delay round the puller's loop, in seconds: a frame stands for half its time until the next. */
export const wholeDelayS = (given: PullGiven, reactionMs: number): number =>
  (given.pictureDelayMs + 500 / given.frameRateHz + reactionMs + given.linkDelayMs + given.motorLagMs) / 1000;

/** Gain of the crossover model for a phase margin at a delay, capped: ωc = (π/2 − φ)/τ. */
export const crossoverRadPerS = (delayS: number, marginRad: number, capRadPerS: number): number =>
  Math.min(capRadPerS, (Math.PI / 2 - marginRad) / delayS);

/**
 * Memory of the hand's noise: correlated over a tenth of a second. At that, the −20 dB of the error's power of Levison, Baron
 * & Kleinman 1969 (from memory) are a share of 0.4.
 */
const REMNANT_S = 0.1;

function runTake(shot: Shot, trial: number): void {
  const { given, frames, stepsPerFrame, drive, take } = shot;
  drawTake(shot, trial);
  const reactionMs = reactionOf(given, trial);
  const seenLate = Math.round((given.pictureDelayMs + reactionMs) / 1000 / shot.stepS);
  const framesLate = Math.floor(seenLate / stepsPerFrame);
  const stepsLate = seenLate - framesLate * stepsPerFrame;
  const gain = crossoverRadPerS(wholeDelayS(given, reactionMs), shot.marginRad, given.crossoverCapRadPerS);
  const usesPicture = given.way === 'picture' || given.way === 'both';
  const keep = REMNANT_S / (REMNANT_S + shot.eye.frameS);
  const mind = freshMind();
  let noise = 0;
  let rate = 0;
  for (let frame = 0; frame < frames; frame++) {
    logFrame(shot, frame);
    if (frame === frames - 1) return;
    const step = frame * stepsPerFrame;
    const seen = frame - framesLate;
    if (!usesPicture || seen < 0) {
      runDrive(drive, take.state, take.hand.pathDeg, take.corrections, step, step + stepsPerFrame, rate);
      continue;
    }
    runDrive(drive, take.state, take.hand.pathDeg, take.corrections, step, step + stepsLate, rate);
    const error = looksAt(shot, seen) ? errorSeen(shot.eye, mind, take.log, seen, trial) : 0;
    if (given.remnantShare > 0) noise = keep * noise + Math.sqrt(1 - keep * keep) * normal(given.seed, trial, PURPOSE.remnant, seen);
    rate = gain * error * (1 + given.remnantShare * noise);
    runDrive(drive, take.state, take.hand.pathDeg, take.corrections, step + stepsLate, step + stepsPerFrame, rate);
  }
}

/** Who racks to a mark lets the picture be until the rack is over. */
const looksAt = ({ given, subject }: Shot, frame: number): boolean => given.way === 'picture' || subject.judged[frame] === 1;

function drawTake(shot: Shot, trial: number): void {
  const { given, take, hand, sway, blur, stepS } = shot;
  drawSway(sway, given.seed, trial);
  for (let i = 0; i < take.missMm.length; i++) {
    const { visit } = hand.marks[hand.markOfKeyframe[i]!]!;
    take.missMm[i] = given.subjectMissMm > 0 ? given.subjectMissMm * normal(given.seed, trial, PURPOSE.miss, visit) : 0;
  }
  const path = take.hand.pathDeg;
  // By the picture alone the take starts on a subject that was focused by eye at leisure.
  if (given.way === 'picture') path.fill(angleOfVergence(blur.scale, 1 / subjectMm(shot, 0)));
  else drawHand(hand, take.hand, given, blur.scale, stepS, trial);
  const { state } = take;
  state[MOTOR] = path[0]!;
  state[SPEED] = path.length > 1 ? Math.min(shot.drive.maxDegPerS, Math.max(-shot.drive.maxDegPerS, (path[1]! - path[0]!) / stepS)) : 0;
  state[RING] = path[0]!;
  state[CORRECTION] = 0;
}

/** Nobody reacts in less than a third of the mean. */
function reactionOf({ reactionMs, reactionSpreadMs, seed }: PullGiven, trial: number): number {
  if (reactionSpreadMs === 0) return reactionMs;
  return Math.max(reactionMs / 3, reactionMs + reactionSpreadMs * normal(seed, trial, PURPOSE.reaction, 0));
}

/** Where the subject is at a frame of this take. */
function subjectMm({ subject, take, sway, blur }: Shot, frame: number): number {
  const from = subject.keyframe[frame]!;
  const miss = take.missMm[from]!;
  const next = from + 1 < take.missMm.length ? take.missMm[from + 1]! : miss;
  return Math.max(blur.nearestMm, subject.distanceMm[frame]! + miss + (next - miss) * subject.share[frame]! + swayAt(sway, frame));
}

function logFrame(shot: Shot, frame: number): void {
  const { log, state } = shot.take;
  const distanceMm = subjectMm(shot, frame);
  const ring = state[RING]!;
  log.vergence[frame] = 1 / distanceMm;
  log.wantedDeg[frame] = angleOfVergence(shot.blur.scale, 1 / distanceMm);
  log.ringDeg[frame] = ring;
  log.blurMm[frame] = blurAt(shot.blur, ring, distanceMm);
}

function judgeTake({ frames, subject, take, given }: Shot, tally: Tally, at: number): void {
  const circle = given.circleOfConfusionMm;
  const { bands } = tally;
  let soft = 0;
  let run = 0;
  let longest = 0;
  let largest = 0;
  for (let frame = 0; frame < frames; frame++) {
    if (subject.judged[frame] === 0) {
      run = 0;
      continue;
    }
    const blur = take.log.blurMm[frame]!;
    const sharp = blur <= circle;
    run = sharp ? 0 : run + 1;
    if (!sharp) soft += 1;
    if (run > longest) longest = run;
    if (blur > largest) largest = blur;
    if (bands !== undefined) {
      const column = (frame / bands.stride) | 0;
      bands.bins[column * BINS + binOf(blur / circle)]! += 1;
      if (!sharp) bands.softFrames[column]! += 1;
    }
  }
  tally.softFrames[at] = soft;
  tally.longestSoftFrames[at] = longest;
  tally.largestBlurMm[at] = largest;
}
