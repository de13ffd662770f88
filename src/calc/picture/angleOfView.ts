import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface AngleOfView {
  horizontalDeg: number;
  verticalDeg: number;
  diagonalDeg: number;
}

/** Squeeze widens the tangent of the half angle, not the angle: a 2:1 lens sees less than twice as many degrees. */
export const angleOfView = calculator(
  {
    name: 'picture.angleOfView',
    sentence: 'Full angles that a sensor sees through a lens focused at infinity, across, up and down, and corner to corner.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      sensorWidthMm: positive('mm', 'width of the sensor area in use'),
      sensorHeightMm: positive('mm', 'height of the sensor area in use'),
      squeeze: positive('ratio', 'squeeze of the lens; 1 for spherical'),
    }),
    results: {
      horizontalDeg: 'deg, full angle across',
      verticalDeg: 'deg, full angle up and down',
      diagonalDeg: 'deg, full angle from corner to corner',
    },
    formula: 'tan(h/2) = w·s/(2f);  tan(v/2) = h/(2f);  tan(d/2) = √(tan²(h/2) + tan²(v/2))',
    source: 'Rectilinear projection, as in Ray, Applied Photographic Optics',
    examples: [
      {
        given: { focalLengthMm: 50, sensorWidthMm: 36, sensorHeightMm: 24, squeeze: 1 },
        gives: { horizontalDeg: '39.6', verticalDeg: '27.0', diagonalDeg: '46.8' },
        source: 'a published table of angles for 36 × 24 mm (2006)',
      },
      {
        given: { focalLengthMm: 50, sensorWidthMm: 21.9964, sensorHeightMm: 18.5928, squeeze: 2 },
        gives: { horizontalDeg: '47.4921', verticalDeg: '21.0652' },
        source: 'derived: the anamorphic camera aperture of SMPTE behind a 2:1 lens',
      },
    ],
  },
  ({ focalLengthMm, sensorWidthMm, sensorHeightMm, squeeze }): AngleOfView => {
    const across = (sensorWidthMm * squeeze) / (2 * focalLengthMm);
    const up = sensorHeightMm / (2 * focalLengthMm);
    return { horizontalDeg: fullAngleDeg(across), verticalDeg: fullAngleDeg(up), diagonalDeg: fullAngleDeg(Math.hypot(across, up)) };
  },
);

function fullAngleDeg(tangentOfHalf: number): number {
  return (2 * Math.atan(tangentOfHalf) * 180) / Math.PI;
}
