import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface StopsBetween {
  stops: number;
  lightShare: number;
}

/** Compare like with like: two f-numbers or two T-numbers. */
export const stopsBetween = calculator(
  {
    name: 'optics.stopsBetween',
    sentence: 'Stops from one f-number or T-number to another, and the share of the light that is left.',
    inputs: inputs({
      fromNumber: positive('ratio', 'f-number or T-number to start from'),
      toNumber: positive('ratio', 'f-number or T-number to go to'),
    }),
    results: { stops: 'stops closed down; negative: opened', lightShare: 'light at the second over light at the first' },
    formula: 'stops = 2·log2(to/from);  light = (from/to)²',
    source: 'ISO 517: each whole stop is √2 in the number and half the light',
    examples: [
      { given: { fromNumber: 2, toNumber: 4 }, gives: { stops: '2', lightShare: '0.25' }, source: 'by definition' },
      { given: { fromNumber: 2.8, toNumber: 2 }, gives: { stops: '-0.97' }, source: 'ISO 517: the mark 2.8 stands for 2.8284' },
    ],
  },
  ({ fromNumber, toNumber }): StopsBetween => ({ stops: 2 * Math.log2(toNumber / fromNumber), lightShare: (fromNumber / toNumber) ** 2 }),
);
