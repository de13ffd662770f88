import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface CircleFromViewing {
  circleOfConfusionMm: number;
}

/** What counts as sharp, from how the picture is looked at. */
export const circleFromViewing = calculator(
  {
    name: 'optics.circleFromViewing',
    sentence: 'Circle of confusion from the height of the frame on the sensor and how the finished picture is viewed.',
    inputs: inputs({
      frameHeightMm: positive('mm', 'height of the frame in use on the sensor, vertical meridian'),
      viewingHeights: positive('ratio', 'viewing distance over the height of the picture'),
      acuityArcmin: positive('arcmin', 'smallest angle that the eye tells apart; 1 for full sight'),
    }),
    results: { circleOfConfusionMm: 'mm, largest blur on the sensor that still counts as sharp' },
    formula: 'c = 2·tan(a/2)·(d/H)·h',
    source: 'Ray, Applied Photographic Optics: the eye, carried back through the enlargement; acuity 1 arcmin (20/20)',
    examples: [
      {
        given: { frameHeightMm: 1080, viewingHeights: 3.183, acuityArcmin: 1 },
        gives: { circleOfConfusionMm: '1.000' },
        source: 'ITU-R BT.500 and Poynton: lines of 1080 part at 1 arcmin from 3.18 picture heights: one line high',
      },
      {
        given: { frameHeightMm: 250, viewingHeights: 1, acuityArcmin: 2.75 },
        gives: { circleOfConfusionMm: '0.200' },
        source: 'Ray: 5 lines/mm at 25 cm, 0.2 mm in the final picture (2.75 arcmin)',
      },
    ],
  },
  ({ frameHeightMm, viewingHeights, acuityArcmin }): CircleFromViewing => {
    const acuityRad = (acuityArcmin * Math.PI) / (180 * 60);
    return { circleOfConfusionMm: 2 * Math.tan(acuityRad / 2) * viewingHeights * frameHeightMm };
  },
);
