import { calculator } from '../calculator.ts';
import { inputs, nonNegative } from '../inputs.ts';

export interface DelayError {
  lagMm: number;
}

/** How far a subject has gone by the time the puller sees it there. Marks need no picture and do not lag so. */
export const delayError = calculator(
  {
    name: 'focus.delayError',
    sentence: 'Distance a subject moves during the delay between it and the picture, or between it and the lens.',
    inputs: inputs({
      subjectSpeedMps: nonNegative('m/s', 'speed of the subject along the lens axis'),
      delayMs: nonNegative('ms', 'delay'),
    }),
    results: { lagMm: 'mm, how far behind the picture is' },
    formula: 'lag = speed·delay',
    source: 'Kinematics. No study concerns focus pulling itself',
    examples: [
      {
        given: { subjectSpeedMps: 1.4, delayMs: 100 },
        gives: { lagMm: '140.0' },
        source: 'derived: a walk of 1.4 m/s (common practice) and a tenth of a second',
      },
    ],
  },
  ({ subjectSpeedMps, delayMs }): DelayError => ({ lagMm: subjectSpeedMps * delayMs }),
);
