import { calculator } from '../calculator.ts';
import { inputs, positive, whole } from '../inputs.ts';

export interface ExactStop {
  exactNumber: number;
  error: number;
}

/** Marks are rounded for engraving: 11 stands for 11.31. */
export const exactStop = calculator(
  {
    name: 'optics.exactStop',
    sentence: 'The number that a marked stop stands for in the series of powers of √2, and how far the mark is off.',
    inputs: inputs({
      markedNumber: positive('ratio', 'f-number or T-number as marked'),
      stepsPerStop: whole(1, 'count', 'steps of the series to one stop: 1 whole, 2 half, 3 third stops'),
    }),
    results: { exactNumber: 'nearest number of the exact series', error: 'mark over exact number, less 1' },
    formula: 'exact = 2^(k/(2n)), k whole, nearest in stops;  error = mark/exact − 1',
    source: 'ISO 517',
    examples: [
      { given: { markedNumber: 2.8, stepsPerStop: 1 }, gives: { exactNumber: '2.828', error: '-0.0101' }, source: 'ISO 517: −1.01 %' },
      { given: { markedNumber: 11, stepsPerStop: 1 }, gives: { exactNumber: '11.314', error: '-0.0277' }, source: 'ISO 517: −2.77 %' },
    ],
  },
  ({ markedNumber, stepsPerStop }): ExactStop => {
    const step = Math.round(2 * stepsPerStop * Math.log2(markedNumber));
    const exactNumber = 2 ** (step / (2 * stepsPerStop));
    return { exactNumber, error: markedNumber / exactNumber - 1 };
  },
);
