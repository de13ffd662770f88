import { PURPOSE, normal } from './counterRandom.ts';

/**
 * What the puller makes of a picture. Nothing is corrected until the blur is visible on this screen. Blur carries no sign;
 * with `direction: "known"` the puller is told it, as the textbook operator is: a bound that nobody beats. With `"seen"` it
 * is found out, always by one rule: the puller knows how the hand has turned and sees which way the subject moves; if the
 * picture got softer meanwhile, the error has grown the way that went, and if sharper, it has shrunk. So a soft walk is
 * corrected after the walk, an overshoot is turned back, and a soft face that stands still is a guess and then a hunt:
 * turn, wait for the delayed picture, turn back if it got worse.
 */
export interface Eye {
  readonly visibleBlurMm: number;
  readonly told: boolean;
  readonly frameS: number;
  readonly seed: number;
}

/** Frames as they were; the eye looks at one that is `delay` old. */
export interface FrameLog {
  readonly wantedDeg: Float64Array;
  readonly ringDeg: Float64Array;
  readonly blurMm: Float64Array;
  /** 1/mm of the subject. */
  readonly vergence: Float64Array;
}

/** What is kept in mind from frame to frame. */
export interface Mind {
  soft: boolean;
  side: number;
  /** The frame the present one is compared with. */
  since: number;
}

export const freshMind = (): Mind => ({ soft: false, side: 1, since: 0 });

/**
 * Blur must change by this share to be seen to change. Mather & Smith 2002 measured 0.28 to 0.56; other studies reach 0.1
 * for sharp edges at leisure.
 */
const BLUR_WEBER = 0.3;

/**
 * Change of distance a second, as a share of it, from which approach is seen. Looming is seen from about 0.003 rad/s
 * (driving studies of the 1990s; from memory): a face of 0.1 rad on a near screen. From 0.01 to 0.1.
 */
const NOTICED_APPROACH_PER_S = 0.03;

/** The error to correct, in degrees of the ring, as the puller takes it to be from one frame. */
export function errorSeen(eye: Eye, mind: Mind, log: FrameLog, frame: number, trial: number): number {
  const blur = log.blurMm[frame]!;
  if (!(blur > eye.visibleBlurMm)) {
    mind.soft = false;
    return 0;
  }
  const gap = log.wantedDeg[frame]! - log.ringDeg[frame]!;
  if (eye.told) return gap;
  if (!mind.soft) {
    mind.soft = true;
    mind.since = frame;
    // It became soft just now, so it grew: the error has the sign of what just changed.
    const change = frame === 0 ? 0 : changeKnown(eye, log, frame - 1, frame);
    mind.side = change > 0 ? 1 : change < 0 ? -1 : normal(eye.seed, trial, PURPOSE.guess, frame) < 0 ? -1 : 1;
  } else {
    judgeAgain(eye, mind, log, frame, blur);
  }
  return mind.side * Math.abs(gap);
}

function judgeAgain(eye: Eye, mind: Mind, log: FrameLog, frame: number, blur: number): void {
  const before = log.blurMm[mind.since]!;
  if (Math.abs(blur - before) < BLUR_WEBER * before) return;
  const change = changeKnown(eye, log, mind.since, frame);
  if (change !== 0) mind.side = change > 0 === blur > before ? 1 : -1;
  mind.since = frame;
}

/** By how much the puller knows the error to have changed: what the subject was seen to ask for, less what the hand has turned. */
function changeKnown(eye: Eye, { wantedDeg, ringDeg, vergence }: FrameLog, from: number, to: number): number {
  const start = vergence[from]!;
  const end = vergence[to]!;
  const nearer = Math.max(start, end);
  const noticed = nearer > 0 && Math.abs(end - start) > NOTICED_APPROACH_PER_S * nearer * (to - from) * eye.frameS;
  return (noticed ? wantedDeg[to]! - wantedDeg[from]! : 0) - (ringDeg[to]! - ringDeg[from]!);
}
