import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';
import { needsBeyondFocalLength } from './thinLens.ts';

export interface Blur {
  diameterMm: number;
}

/** Blur on the sensor of a point that is not in focus. Of an anamorphic lens: its height, by the vertical focal length. */
export const blur = calculator(
  {
    name: 'optics.blur',
    sentence: 'Diameter on the sensor of a point at one distance while the lens is focused at another.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      fNumber: positive('ratio', 'f-number (not the T-number)'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the lens; null: infinity')),
      subjectDistanceMm: orInfinity(positive('mm', 'distance of the point, from the lens; null: infinity')),
    }),
    results: { diameterMm: 'mm, diameter of the blur on the sensor' },
    formula: 'f²·|d − s|/(N·d·(s − f)), s in focus, d the point',
    source: 'SMPTE RIS OpenLensIO v1.0, section 4.3; Ray, Applied Photographic Optics. Thin lens, no diffraction',
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2.8, focusDistanceMm: 3000, subjectDistanceMm: null },
        gives: { diameterMm: '0.302663' },
        source: 'equation of OpenLensIO v1.0, section 4.3; number derived',
      },
      {
        given: { focalLengthMm: 50, fNumber: 2.8, focusDistanceMm: 3000, subjectDistanceMm: 10_000 },
        gives: { diameterMm: '0.211864' },
        source: 'equation of OpenLensIO v1.0, section 4.3; number derived',
      },
    ],
  },
  ({ focalLengthMm: f, fNumber, focusDistanceMm: s, subjectDistanceMm: d }): Blur => {
    needsBeyondFocalLength(f, s, 'focusDistanceMm');
    const aperture = f / fNumber;
    if (s === Infinity) return { diameterMm: (aperture * f) / d };
    const away = d === Infinity ? 1 : Math.abs(d - s) / d;
    return { diameterMm: aperture * (f / (s - f)) * away };
  },
);
