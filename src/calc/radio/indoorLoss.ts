import * as z from 'zod';
import { calculator } from '../calculator.ts';
import { finite, inputs, nonNegative, positive } from '../inputs.ts';

export interface IndoorLoss {
  lossDb: number;
}

/** Loss of a radio path inside a building, by a coefficient for the kind of building. */
export const indoorLoss = calculator(
  {
    name: 'radio.indoorLoss',
    sentence: 'Loss between two aerials inside a building, walls of its kind included in the coefficient.',
    inputs: inputs({
      frequencyMHz: positive('MHz', 'frequency'),
      distanceM: z.number().min(1).meta({ unit: 'm', description: 'distance, from 1 m on, where the formula begins' }),
      lossCoefficient: nonNegative('ratio', 'N: at 5.2 GHz 31 in an office, 28 in a house, 30 in a flat; 20 in free space'),
      floorLossDb: finite('dB', 'Lf: loss through floors; 0 on one floor, 16 dB for one office floor'),
    }),
    results: { lossDb: 'dB' },
    formula: '20·log10 f + N·log10 d + Lf − 28',
    source: 'ITU-R P.1238, form of its older editions. Expect single paths to differ by 10 dB and more either way',
    examples: [
      {
        given: { frequencyMHz: 5200, distanceM: 30, lossCoefficient: 31, floorLossDb: 0 }, gives: { lossDb: '92.111' },
        source: 'ITU-R P.1238, N of an office',
      },
      {
        given: { frequencyMHz: 2114, distanceM: Math.hypot(30, 9), lossCoefficient: 28, floorLossDb: 8 },
        gives: { lossDb: '88.3855' },
        source: 'test of a network simulator’s P.1238 model',
      },
    ],
  },
  ({ frequencyMHz, distanceM, lossCoefficient, floorLossDb }): IndoorLoss => ({
    lossDb: 20 * Math.log10(frequencyMHz) + lossCoefficient * Math.log10(distanceM) + floorLossDb - 28,
  }),
);
