import { calculator } from '../calculator.ts';
import { finite, inputs, positive } from '../inputs.ts';

export interface PackPlace {
  packMm: number;
}

/** Where a battery must go so that a rig balances. Whether there is a plate there is another question. */
export const packPlace = calculator(
  {
    name: 'mechanics.packPlace',
    sentence: 'Where along a rig a pack must sit to bring the common centre of mass where it is wanted.',
    inputs: inputs({
      massG: positive('g', 'mass of the rig without the pack'),
      centreMm: finite('mm', 'its centre along the rig, from any datum'),
      packMassG: positive('g', 'mass of the pack'),
      wantedMm: finite('mm', 'where the common centre should be: over the pad, over the head'),
    }),
    results: { packMm: 'mm from the same datum, centre of the pack' },
    formula: 'x = w + (w − c)·m/mp',
    source: 'Balance of moments',
    examples: [
      {
        given: { massG: 7000, centreMm: 80, packMassG: 1000, wantedMm: 0 }, gives: { packMm: '-560' },
        source: 'derived: 7 kg at 80 mm against 1 kg at 560 mm',
      },
    ],
  },
  ({ massG, centreMm, packMassG, wantedMm }): PackPlace => ({ packMm: wantedMm + ((wantedMm - centreMm) * massG) / packMassG }),
);
