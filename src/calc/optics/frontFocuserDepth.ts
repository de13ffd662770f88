import { calculator } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, positive } from '../inputs.ts';
import { distanceAheadOf } from './thinLens.ts';

export interface FrontFocuserDepth {
  nearMm: number;
  farMm: number;
  totalMm: number;
}

/** Depth of a lens locked at infinity with a variable diopter in front: blur follows the dioptres at the focuser, at any range. */
export const frontFocuserDepth = calculator(
  {
    name: 'optics.frontFocuserDepth',
    sentence: 'Near and far limits where a variable diopter in front focuses and the taking lens stays at infinity.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length of the taking lens, the vertical one, which governs'),
      fNumber: positive('ratio', 'f-number of the taking lens (not the T-number)'),
      focusDistanceMm: orInfinity(positive('mm', 'distance in focus, from the sensor plane; null: infinity')),
      circleOfConfusionMm: positive('mm', 'largest blur on the sensor that still counts as sharp'),
      focuserToSensorMm: nonNegative('mm', 'the focuser ahead of the sensor plane'),
    }),
    results: {
      nearMm: 'mm, near limit, from the sensor plane',
      farMm: 'mm, far limit, from the sensor plane; null: infinity',
      totalMm: 'mm, far less near; null where far is infinity',
    },
    formula: 's = D − offset;  k = c·N/f²;  near = 1/(1/s + k) + offset;  far = 1/(1/s − k) + offset, infinite where k ≥ 1/s',
    source: 'Derived: beams between focuser and taking lens are parallel, so blur = f·(f/N)·|1/d − 1/s|. The focuser is thin',
    examples: [
      {
        given: { focalLengthMm: 50, fNumber: 2, focusDistanceMm: 1250, circleOfConfusionMm: 0.025, focuserToSensorMm: 250 },
        gives: { nearMm: '1230.39', farMm: '1270.41', totalMm: '40.02' },
        source: 'derived: k = 0.02 dpt, so 1 dpt at the focuser runs to 1.02 and 0.98 dpt, 980.392 and 1020.408 mm',
      },
      {
        given: { focalLengthMm: 50, fNumber: 4, focusDistanceMm: null, circleOfConfusionMm: 0.025, focuserToSensorMm: 200 },
        gives: { nearMm: '25200', farMm: null, totalMm: null },
        source: 'derived: 0.04 dpt, 25 m ahead of the focuser',
      },
    ],
  },
  ({ focalLengthMm, fNumber, focusDistanceMm, circleOfConfusionMm, focuserToSensorMm }): FrontFocuserDepth => {
    const s = distanceAheadOf('focuser', { toSensorMm: focuserToSensorMm, distanceMm: focusDistanceMm }, 'focusDistanceMm');
    const allowed = (circleOfConfusionMm * fNumber) / focalLengthMm ** 2;
    const nearMm = 1 / (1 / s + allowed) + focuserToSensorMm;
    const farMm = allowed >= 1 / s ? Infinity : 1 / (1 / s - allowed) + focuserToSensorMm;
    return { nearMm, farMm, totalMm: farMm - nearMm };
  },
);
