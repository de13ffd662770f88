import { calculator } from '../calculator.ts';
import { inputs, nonNegative } from '../inputs.ts';
import { halfAngle, tangentOf } from './halfAngle.ts';

export interface ClearOpening {
  widthMm: number;
  heightMm: number;
}

/** A front anamorphot has a pupil per meridian; one distance for both would fail every good matte box. */
export const clearOpening = calculator(
  {
    name: 'optics.clearOpening',
    sentence: 'Opening that a filter stage, hood or matte box must leave clear, so that no ray of the picture is cut.',
    inputs: inputs({
      horizontalPupilMm: nonNegative('mm', 'width of the entrance pupil'),
      horizontalPupilDistanceMm: nonNegative('mm', 'from the opening back to the pupil of the horizontal meridian'),
      verticalPupilMm: nonNegative('mm', 'height of the entrance pupil'),
      verticalPupilDistanceMm: nonNegative('mm', 'from the opening back to the pupil of the vertical meridian'),
      horizontalHalfAngleDeg: halfAngle('half the angle of view across'),
      verticalHalfAngleDeg: halfAngle('half the angle of view up and down'),
    }),
    results: { widthMm: 'mm, clear width needed', heightMm: 'mm, clear height needed' },
    formula: 'each 2·d·tan(half angle) + pupil',
    source: 'Geometry of the beams at the edges of the picture; entrance pupil as the centre of view: Ray, Applied Photographic Optics',
    examples: [
      {
        given: {
          horizontalPupilMm: 10, horizontalPupilDistanceMm: 155, verticalPupilMm: 20, verticalPupilDistanceMm: 240,
          horizontalHalfAngleDeg: 45, verticalHalfAngleDeg: 0,
        },
        gives: { widthMm: '320.00', heightMm: '20.00' },
        source: 'derived: at 45° a ray goes as far aside as forward',
      },
    ],
  },
  (given): ClearOpening => ({
    widthMm: 2 * given.horizontalPupilDistanceMm * tangentOf(given.horizontalHalfAngleDeg) + given.horizontalPupilMm,
    heightMm: 2 * given.verticalPupilDistanceMm * tangentOf(given.verticalHalfAngleDeg) + given.verticalPupilMm,
  }),
);
