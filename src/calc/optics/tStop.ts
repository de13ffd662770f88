import { calculator } from '../calculator.ts';
import { inputs, positive, share } from '../inputs.ts';

export interface TStop {
  tNumber: number;
}

/** Exposure goes by the T-number, depth by the f-number. */
export const tStop = calculator(
  {
    name: 'optics.tStop',
    sentence: 'T-number of a lens of a given f-number that passes a given share of the light.',
    inputs: inputs({ fNumber: positive('ratio', 'f-number'), transmittance: share('share of the light that passes') }),
    results: { tNumber: 'T-number, never below the f-number' },
    formula: 'T = N/√τ',
    source: 'ISO 517; Ray, Applied Photographic Optics',
    examples: [
      { given: { fNumber: 2, transmittance: 0.75 }, gives: { tNumber: '2.309' }, source: 'published example' },
      { given: { fNumber: 4, transmittance: 0.5 }, gives: { tNumber: '5.657' }, source: 'published example: half the light, one stop' },
    ],
  },
  ({ fNumber, transmittance }): TStop => ({ tNumber: fNumber / Math.sqrt(transmittance) }),
);
