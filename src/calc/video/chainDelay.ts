import * as z from 'zod';
import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive, text } from '../inputs.ts';

export interface ChainDelay {
  delayMs: number;
  delayFrames: number;
}

const stage = z
  .strictObject({
    name: text('what the stage is'),
    ms: nonNegative('ms', 'its delay in time').optional(),
    frames: nonNegative('frames', 'its delay in frames').optional(),
  })
  .refine(({ ms, frames }) => ms !== undefined || frames !== undefined, 'This stage states no delay; give `ms` or `frames`, 0 where it has none.');

/** Delay from the lens to the eye along a chain of stages. */
export const chainDelay = calculator(
  {
    name: 'video.chainDelay',
    sentence: 'Delay of a picture through a chain of stages, some of which delay by time and some by frames.',
    inputs: inputs({
      frameRateHz: positive('Hz', 'frames a second'),
      stages: z.array(stage).readonly().meta({ unit: 'ms', description: 'the stages from camera to screen; `ms` and `frames` of one add up' }),
    }),
    results: { delayMs: 'ms', delayFrames: 'frames at this rate' },
    formula: 'delay = Σ ms + Σ frames · 1000/rate',
    source: 'Arithmetic. Figures of stages are measured: film a running stopwatch and the screen in one shot',
    examples: [
      {
        given: { frameRateHz: 25, stages: [{ name: 'camera', frames: 2 }, { name: 'radio', ms: 4 }, { name: 'screen', frames: 0.5, ms: 1 }] },
        gives: { delayMs: '105', delayFrames: '2.625' },
        source: 'derived: 2.5 frames of 40 ms and 5 ms',
      },
    ],
  },
  ({ frameRateHz, stages }): ChainDelay => {
    const delayMs = stages.reduce((sum, { ms = 0, frames = 0 }) => sum + ms + (frames * 1000) / frameRateHz, 0);
    return { delayMs, delayFrames: (delayMs * frameRateHz) / 1000 };
  },
);
