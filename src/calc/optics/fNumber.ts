import { calculator } from '../calculator.ts';
import { inputs, positive, share } from '../inputs.ts';

export interface FNumber {
  fNumber: number;
}

/** The other way round from `tStop`: what depth of field is reckoned with when only the T-number is marked. */
export const fNumber = calculator(
  {
    name: 'optics.fNumber',
    sentence: 'f-number behind a marked T-number, for a given share of the light that passes.',
    inputs: inputs({ tNumber: positive('ratio', 'T-number as marked'), transmittance: share('share of the light that passes') }),
    results: { fNumber: 'f-number, never above the T-number' },
    formula: 'N = T·√τ',
    source: 'ISO 517; Ray, Applied Photographic Optics',
    examples: [
      { given: { tNumber: 2.3094, transmittance: 0.75 }, gives: { fNumber: '2.0000' }, source: 'published example of optics.tStop turned round' },
      { given: { tNumber: 5.6569, transmittance: 0.5 }, gives: { fNumber: '4.0000' }, source: 'published example of optics.tStop turned round' },
    ],
  },
  ({ tNumber, transmittance }): FNumber => ({ fNumber: tNumber * Math.sqrt(transmittance) }),
);
