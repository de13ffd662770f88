import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';
import { SPEED_OF_LIGHT_MPS } from './speedOfLight.ts';

export interface PathLoss {
  lossDb: number;
}

/** Loss of a radio path in free space: the least there can be. */
export const freeSpaceLoss = calculator(
  {
    name: 'radio.freeSpaceLoss',
    sentence: 'Loss between two aerials without gain in free space.',
    inputs: inputs({ frequencyMHz: positive('MHz', 'frequency'), distanceM: positive('m', 'distance') }),
    results: { lossDb: 'dB; below 0 nearer than a wavelength, where it no longer holds' },
    formula: '20·log10(4π·d·f/c), c = 299 792 458 m/s',
    source: 'ITU-R P.525; its printed short form is 32.4 + 20 log f(MHz) + 20 log d(km)',
    examples: [{ given: { frequencyMHz: 5180, distanceM: 100 }, gives: { lossDb: '86.734' }, source: 'ITU-R P.525, exact form' }],
  },
  ({ frequencyMHz, distanceM }): PathLoss => ({ lossDb: 20 * Math.log10((4 * Math.PI * distanceM * frequencyMHz * 1e6) / SPEED_OF_LIGHT_MPS) }),
);
