import { calculator } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, positive } from '../inputs.ts';
import type { Blur } from './blur.ts';
import { distanceAheadOf } from './thinLens.ts';

/** Blur where a variable diopter in front focuses and the taking lens stays at infinity; the height of it, behind a block. */
export const frontFocuserBlur = calculator(
  {
    name: 'optics.frontFocuserBlur',
    sentence: 'Diameter on the sensor of a point at one distance while a variable diopter in front is focused at another.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length of the taking lens, the vertical one, which governs'),
      fNumber: positive('ratio', 'f-number of the taking lens (not the T-number)'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the sensor plane; null: infinity')),
      subjectDistanceMm: orInfinity(positive('mm', 'distance of the point, from the sensor plane; null: infinity')),
      focuserToSensorMm: nonNegative('mm', 'the focuser ahead of the sensor plane'),
    }),
    results: { diameterMm: 'mm, diameter of the blur on the sensor' },
    formula: 'f²/N·|1/s − 1/d|, both less the offset of the focuser',
    source: 'Derived: beams between focuser and taking lens are parallel for what is in focus. The focuser is thin; no diffraction',
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2, focusDistanceMm: 1250, subjectDistanceMm: 1270.4082, focuserToSensorMm: 250 },
        gives: { diameterMm: '0.0250' },
        source: 'derived: 1 dpt against 0.98 dpt; the far limit of the example of optics.frontFocuserDepth',
      },
      {
        given: { focalLengthMm: 50, fNumber: 2.5, focusDistanceMm: null, subjectDistanceMm: 2200, focuserToSensorMm: 200 },
        gives: { diameterMm: '0.5' },
        source: 'derived: 1000 mm²·0.5 dpt',
      },
    ],
  },
  ({ focalLengthMm, fNumber, focusDistanceMm, subjectDistanceMm, focuserToSensorMm: toSensorMm }): Blur => {
    const s = distanceAheadOf('focuser', { toSensorMm, distanceMm: focusDistanceMm }, 'focusDistanceMm');
    const d = distanceAheadOf('focuser', { toSensorMm, distanceMm: subjectDistanceMm }, 'subjectDistanceMm');
    return { diameterMm: (focalLengthMm / fNumber) * focalLengthMm * Math.abs(1 / s - 1 / d) };
  },
);
