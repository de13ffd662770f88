import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface WalkedMargin {
  marginDb: number;
}

/** Margin of a link from the distance at which it broke up when somebody walked away with the receiver: better than any estimate. */
export const walkedMargin = calculator(
  {
    name: 'radio.walkedMargin',
    sentence: 'Margin of a radio link at a distance, from the distance at which it broke up when it was walked.',
    inputs: inputs({
      breaksUpAtM: positive('m', 'distance at which the picture broke up'),
      distanceM: positive('m', 'distance on the day'),
      lossCoefficient: nonNegative('ratio', 'loss in dB for ten times the distance: 20 in the open, about 28 to 31 indoors (ITU-R P.1238)'),
      extraLossDb: nonNegative('dB', 'bodies and walls that were not in the way when it was walked'),
    }),
    results: { marginDb: 'dB; below 0 it breaks up' },
    formula: 'N·log10(broke up at/distance) − extra',
    source: 'Path loss rises by N dB for ten times the distance (ITU-R P.525 and P.1238); zero margin where it broke up',
    examples: [
      {
        given: { breaksUpAtM: 200, distanceM: 20, lossCoefficient: 20, extraLossDb: 0 }, gives: { marginDb: '20.000' },
        source: 'derived: a tenth of the distance, 20 dB',
      },
    ],
  },
  ({ breaksUpAtM, distanceM, lossCoefficient, extraLossDb }): WalkedMargin => ({
    marginDb: lossCoefficient * Math.log10(breaksUpAtM / distanceM) - extraLossDb,
  }),
);
