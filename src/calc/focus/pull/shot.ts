import { type Drive, STATE_LENGTH, driveOf } from './drive.ts';
import type { Eye, FrameLog } from './eye.ts';
import { type FocusBlur, focusBlur } from './focusBlur.ts';
import type { PullGiven } from './given.ts';
import { type HandPlan, type HandTake, handPlan, handTake } from './hand.ts';
import { ringScale } from './ringScale.ts';
import { type SubjectPlan, subjectPlan } from './subject.ts';
import { type SwayPlan, swayPlan } from './sway.ts';

/** A shot made ready: everything that is the same in all its takes, and the room to run one in. */
export interface Shot {
  readonly given: PullGiven;
  readonly frames: number;
  readonly stepsPerFrame: number;
  readonly stepS: number;
  readonly judgedFrames: number;
  readonly subject: SubjectPlan;
  readonly sway: SwayPlan;
  readonly blur: FocusBlur;
  readonly hand: HandPlan;
  readonly drive: Drive;
  readonly eye: Eye;
  readonly marginRad: number;
  readonly take: TakeRoom;
}

/** Written over by each take. */
export interface TakeRoom {
  readonly hand: HandTake;
  readonly missMm: Float64Array;
  readonly corrections: Float64Array;
  readonly state: Float64Array;
  readonly log: FrameLog;
}

export const framesOf = ({ seconds, frameRateHz }: PullGiven): number => Math.max(1, Math.round(seconds * frameRateHz));
export const stepsPerFrameOf = ({ stepMs, frameRateHz }: PullGiven): number => Math.max(1, Math.ceil(1000 / frameRateHz / stepMs - 1e-9));

/** Makes a shot ready whose inputs have passed `checkShot`. */
export function prepareShot(given: PullGiven): Shot {
  const frames = framesOf(given);
  const stepsPerFrame = stepsPerFrameOf(given);
  const stepS = 1 / given.frameRateHz / stepsPerFrame;
  const scale = ringScale(given.scale);
  const steps = (frames - 1) * stepsPerFrame + 1;
  const subject = subjectPlan(given.keyframes, frames, given.frameRateHz);
  const drive = driveOf(given, stepS, scale.lowDeg, scale.highDeg);
  const hand = handPlan(given, scale, steps, stepS);
  return {
    given,
    frames,
    stepsPerFrame,
    stepS,
    judgedFrames: judgedFramesOf(given),
    subject,
    sway: swayPlan(given.swayMm, given.swayHz, frames, given.frameRateHz),
    blur: focusBlur(scale, given),
    hand,
    drive,
    eye: { visibleBlurMm: given.visibleBlurMm, told: given.direction === 'known', frameS: 1 / given.frameRateHz, seed: given.seed },
    marginRad: (given.phaseMarginDeg * Math.PI) / 180,
    take: {
      hand: handTake(hand),
      missMm: new Float64Array(given.keyframes.length),
      corrections: new Float64Array(steps + drive.linkSteps),
      state: new Float64Array(STATE_LENGTH),
      log: {
        wantedDeg: new Float64Array(frames), ringDeg: new Float64Array(frames), blurMm: new Float64Array(frames), vergence: new Float64Array(frames),
      },
    },
  };
}

/** How many frames of a shot count: all but those of racks. */
export function judgedFramesOf(given: PullGiven): number {
  return subjectPlan(given.keyframes, framesOf(given), given.frameRateHz).judged.reduce((sum, one) => sum + one, 0);
}
