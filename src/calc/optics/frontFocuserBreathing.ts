import { calculator } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, positive } from '../inputs.ts';
import { type Breathing, change } from './breathing.ts';
import { distanceAheadOf } from './thinLens.ts';

/** A focuser in front bends the edges of the picture inwards as it comes closer, more so the farther it stands ahead of the pupil. */
export const frontFocuserBreathing = calculator(
  {
    name: 'optics.frontFocuserBreathing',
    sentence: 'Change of the angle of view over a rack, where a variable diopter in front focuses and the taking lens stays at infinity.',
    inputs: inputs({
      pupilToFocuserMm: nonNegative('mm', 'from the entrance pupil of the meridian in question forward to the focuser'),
      focuserToSensorMm: nonNegative('mm', 'the focuser ahead of the sensor plane'),
      fromDistanceMm: orInfinity(positive('mm', 'distance the rack starts at, from the sensor plane; null: infinity')),
      toDistanceMm: orInfinity(positive('mm', 'distance the rack ends at, from the sensor plane; null: infinity')),
    }),
    results: {
      fromShare: 'field at the start over that at infinity',
      toShare: 'field at the end over that at infinity',
      change: 'field at the end over that at the start, less 1; positive: it sees more at the end',
    },
    formula: 's = D − offset;  share = 1 − e/s, e pupil to focuser;  change = to/from − 1',
    source: 'Derived: the ray through the pupil meets the thin focuser at e·tan θ and is bent inwards by e·tan θ/s',
    examples: [
      {
        given: { pupilToFocuserMm: 100, focuserToSensorMm: 200, fromDistanceMm: null, toDistanceMm: 1200 },
        gives: { fromShare: '1', toShare: '0.9000', change: '-0.1000' },
        source: 'derived: 100 mm ahead of the pupil, one dioptre bends by a tenth',
      },
    ],
  },
  ({ pupilToFocuserMm, focuserToSensorMm: toSensorMm, fromDistanceMm, toDistanceMm }): Breathing => {
    const shareAt = (distanceMm: number, path: string) => 1 - pupilToFocuserMm / distanceAheadOf('focuser', { toSensorMm, distanceMm }, path);
    return change(shareAt(fromDistanceMm, 'fromDistanceMm'), shareAt(toDistanceMm, 'toDistanceMm'));
  },
);
