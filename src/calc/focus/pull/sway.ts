import { PURPOSE, normal } from './counterRandom.ts';
import { cosTurns, sinTurns } from './sameOnEveryEngine.ts';

/**
 * Camera sway along the axis: three lines about the centre frequency, each with two normal amplitudes. That is a stationary
 * normal process, and repeats only after minutes. Bodies sway over a broad band; three lines an octave and a half wide stand
 * for it (a choice of ours: nothing is published for handheld cameras).
 */
const LINES = [0.62, 1, 1.57];

export interface SwayPlan {
  readonly rmsMm: number;
  /** cos and sin of each line at each frame, in turn. */
  readonly waves: Float64Array;
  readonly amplitudes: Float64Array;
}

export function swayPlan(rmsMm: number, centreHz: number, frames: number, frameRateHz: number): SwayPlan {
  const perFrame = 2 * LINES.length;
  const waves = new Float64Array(rmsMm > 0 ? frames * perFrame : 0);
  for (let i = 0; i < waves.length; i++) {
    const turns = (LINES[(i % perFrame) >> 1]! * centreHz * Math.floor(i / perFrame)) / frameRateHz;
    waves[i] = i % 2 === 0 ? cosTurns(turns) : sinTurns(turns);
  }
  return { rmsMm, waves, amplitudes: new Float64Array(perFrame) };
}

/** Draws the amplitudes of one take. */
export function drawSway(plan: SwayPlan, seed: number, trial: number): void {
  if (plan.rmsMm === 0) return;
  const rmsOfLine = plan.rmsMm / Math.sqrt(LINES.length);
  for (let i = 0; i < plan.amplitudes.length; i++) plan.amplitudes[i] = rmsOfLine * normal(seed, trial, PURPOSE.sway, i);
}

export function swayAt(plan: SwayPlan, frame: number): number {
  if (plan.rmsMm === 0) return 0;
  const { waves, amplitudes } = plan;
  let sum = 0;
  for (let i = 0, at = frame * amplitudes.length; i < amplitudes.length; i++, at++) sum += amplitudes[i]! * waves[at]!;
  return sum;
}
