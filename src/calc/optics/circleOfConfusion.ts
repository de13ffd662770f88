import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface CircleOfConfusion {
  circleOfConfusionMm: number;
}

/** What counts as sharp, from what is delivered. It is a choice of the shoot; 0.025 mm is usual for 35 mm cine. */
export const circleOfConfusion = calculator(
  {
    name: 'optics.circleOfConfusion',
    sentence: 'Circle of confusion from the height of the frame on the sensor and the lines of the picture delivered.',
    inputs: inputs({
      frameHeightMm: positive('mm', 'height of the frame in use on the sensor, vertical meridian'),
      deliveryLines: positive('px', 'lines of the picture delivered, top to bottom'),
      linesPerBlur: positive('ratio', 'how many delivered lines a blur may cover and still count as sharp; 2 is one pair, the finest detail'),
    }),
    results: { circleOfConfusionMm: 'mm, largest blur on the sensor that still counts as sharp' },
    formula: 'c = height·k/lines',
    source: 'Derived: a picture of n lines resolves n/2 pairs (sampling theorem). How many lines to allow is a choice, listed with the answer',
    examples: [
      {
        given: { frameHeightMm: 18.5928, deliveryLines: 1716, linesPerBlur: 2 },
        gives: { circleOfConfusionMm: '0.02167' },
        source: 'derived: the anamorphic camera aperture of SMPTE in the DCI scope container; near the usual 0.025 mm',
      },
    ],
  },
  ({ frameHeightMm, deliveryLines, linesPerBlur }): CircleOfConfusion => ({ circleOfConfusionMm: (frameHeightMm * linesPerBlur) / deliveryLines }),
);
