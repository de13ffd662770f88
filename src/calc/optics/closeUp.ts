import { calculator } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, positive } from '../inputs.ts';
import { distanceAheadOf } from './thinLens.ts';

export interface CloseUp {
  workingDistanceMm: number;
  tapeMm: number;
}

/**
 * Where the lens is sharp with a close-up lens on, from its own focus mark. The powers of several add. On an anamorphic
 * lens it sits ahead of the anamorphot, where it serves both meridians alike. The near and far limits of the bare lens pass
 * through it one by one, and give the depth with the close-up lens on.
 */
export const closeUp = calculator(
  {
    name: 'optics.closeUp',
    sentence: 'Distance in focus with a close-up lens in front, for a distance on the lens’s own focus scale.',
    inputs: inputs({
      powerDpt: nonNegative('dpt', 'power of the close-up lens, or the sum of several; dioptres, 1/m'),
      focusDistanceMm: orInfinity(positive('mm', "the lens's own mark, from the sensor plane; null: infinity")),
      diopterToSensorMm: nonNegative('mm', 'the close-up lens ahead of the sensor plane'),
    }),
    results: {
      workingDistanceMm: 'mm, from the close-up lens to the plane in focus; null: infinity',
      tapeMm: 'mm, from the sensor plane to the plane in focus; null: infinity',
    },
    formula: 's = D − offset;  working = 1000/(1000/s + P);  tape = working + offset',
    source: 'Vergence of a thin lens, as in Ray, Applied Photographic Optics: X/(P·X + 1), X in metres',
    examples: [
      {
        given: { powerDpt: 3, focusDistanceMm: 1500, diopterToSensorMm: 0 },
        gives: { workingDistanceMm: '272.7' },
        source: 'published example: 1.5 m and +3 → 0.2727 m',
      },
      {
        given: { powerDpt: 2, focusDistanceMm: null, diopterToSensorMm: 200 },
        gives: { workingDistanceMm: '500', tapeMm: '700' },
        source: 'at infinity the working distance is 1/P',
      },
    ],
  },
  ({ powerDpt, focusDistanceMm, diopterToSensorMm }): CloseUp => {
    const s = distanceAheadOf('close-up lens', { toSensorMm: diopterToSensorMm, distanceMm: focusDistanceMm }, 'focusDistanceMm');
    const workingDistanceMm = 1000 / (1000 / s + powerDpt);
    return { workingDistanceMm, tapeMm: workingDistanceMm + diopterToSensorMm };
  },
);
