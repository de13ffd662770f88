import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface Coverage {
  diagonalMm: number;
  marginMm: number;
  use: number;
}

/** Whether the image circle reaches the corners. It says nothing of how dark or soft the edge of the circle is. */
export const coverage = calculator(
  {
    name: 'picture.coverage',
    sentence: 'Diagonal of the sensor area in use against the image circle of the lens.',
    inputs: inputs({
      imageCircleMm: positive('mm', 'diameter of the image circle at the focus and stop in use'),
      sensorWidthMm: positive('mm', 'width of the sensor area in use'),
      sensorHeightMm: positive('mm', 'height of the sensor area in use'),
    }),
    results: {
      diagonalMm: 'mm, diagonal of the sensor area',
      marginMm: 'mm, image circle less diagonal, both sides together; negative: the corners are dark',
      use: 'diagonal over image circle; up to 1 it covers',
    },
    formula: 'diagonal = √(w² + h²);  margin = circle − diagonal;  use = diagonal/circle',
    source: 'Geometry',
    examples: [
      {
        given: { imageCircleMm: 43.3, sensorWidthMm: 36, sensorHeightMm: 24 },
        gives: { diagonalMm: '43.27', marginMm: '0.0', use: '1.00' },
        source: 'common practice: 36 × 24 mm has a diagonal of 43.27 mm',
      },
    ],
  },
  ({ imageCircleMm, sensorWidthMm, sensorHeightMm }): Coverage => {
    const diagonalMm = Math.hypot(sensorWidthMm, sensorHeightMm);
    return { diagonalMm, marginMm: imageCircleMm - diagonalMm, use: diagonalMm / imageCircleMm };
  },
);
