import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';
import { ellipseInCircle } from './ellipseInCircle.ts';
import { halfAngle, tangentOf } from './halfAngle.ts';

export interface RoundOpening {
  offsetXMm: number;
  offsetYMm: number;
  share: number;
}

/** Round glass ahead of the lens (a focuser, a close-up lens, a screwed filter) dims the corners before it shows as an edge. */
export const roundOpening = calculator(
  {
    name: 'optics.roundOpening',
    sentence: 'Share of the light for a frame corner that passes a round opening ahead of the lens.',
    inputs: inputs({
      horizontalPupilMm: positive('mm', 'width of the entrance pupil'),
      horizontalPupilDistanceMm: nonNegative('mm', 'from the opening back to the pupil of the horizontal meridian'),
      verticalPupilMm: positive('mm', 'height of the entrance pupil'),
      verticalPupilDistanceMm: nonNegative('mm', 'from the opening back to the pupil of the vertical meridian'),
      horizontalHalfAngleDeg: halfAngle('half the angle of view across'),
      verticalHalfAngleDeg: halfAngle('half the angle of view up and down'),
      clearDiameterMm: positive('mm', 'clear diameter of the opening'),
    }),
    results: {
      offsetXMm: 'mm, how far aside the corner beam crosses the opening',
      offsetYMm: 'mm, how far up it crosses the opening',
      share: 'share of it that passes (to about 1e-6)',
    },
    formula: 'beam: an ellipse as wide and high as the pupils, off by d·tan(half angle) in each meridian;  share: its area inside the circle',
    source: 'Geometry, as optics.clearOpening; the overlap summed in strips as in optics.blockVignette',
    examples: [
      {
        given: {
          horizontalPupilMm: 2, horizontalPupilDistanceMm: 1, verticalPupilMm: 2, verticalPupilDistanceMm: 1, horizontalHalfAngleDeg: 45,
          verticalHalfAngleDeg: 0, clearDiameterMm: 2,
        },
        gives: { offsetXMm: '1.000', offsetYMm: '0', share: '0.39100' },
        source: 'MathWorld: unit circles one apart share 1.228370, over π',
      },
    ],
  },
  (given): RoundOpening => {
    const xMm = given.horizontalPupilDistanceMm * tangentOf(given.horizontalHalfAngleDeg);
    const yMm = given.verticalPupilDistanceMm * tangentOf(given.verticalHalfAngleDeg);
    const beam = { halfWidthMm: given.horizontalPupilMm / 2, halfHeightMm: given.verticalPupilMm / 2, xMm, yMm };
    return { offsetXMm: xMm, offsetYMm: yMm, share: ellipseInCircle(beam, given.clearDiameterMm / 2) };
  },
);
