import { calculator, NoAnswer } from '../calculator.ts';
import { inputs, nonNegative, orInfinity, positive } from '../inputs.ts';
import { distanceAheadOf } from './thinLens.ts';

export interface CloseUpPower {
  leastDpt: number;
  mostDpt: number;
}

/** Which close-up lenses serve a shot: strong enough for its near end, weak enough that the far end is not beyond infinity. */
export const closeUpPower = calculator(
  {
    name: 'optics.closeUpPower',
    sentence: 'Least and most power of a close-up lens with which a lens can focus both ends of a shot.',
    inputs: inputs({
      shotNearMm: positive('mm', 'nearest distance the shot asks, from the sensor plane'),
      shotFarMm: orInfinity(positive('mm', 'farthest distance the shot asks, from the sensor plane; null: infinity')),
      closeFocusMm: positive('mm', "the lens's own closest mark, from the sensor plane"),
      diopterToSensorMm: nonNegative('mm', 'the close-up lens ahead of the sensor plane'),
    }),
    results: {
      leastDpt: 'dpt, weakest that reaches the near end; 0: the lens reaches it alone',
      mostDpt: 'dpt, strongest that still reaches the far end with the lens at infinity; below leastDpt: no one lens serves the whole shot',
    },
    formula: 'Distances less the offset, in metres: least = max(0, 1/near − 1/close);  most = 1/far',
    source: 'Vergence of a thin lens, as in Ray, Applied Photographic Optics',
    examples: [
      {
        given: { shotNearMm: 272.7273, shotFarMm: 333.3333, closeFocusMm: 1500, diopterToSensorMm: 0 },
        gives: { leastDpt: '3.0000', mostDpt: '3.0000' },
        source: 'published example turned round: a lens at 1.5 m with +3 is sharp at 0.2727 m, and at infinity at 1/3 m',
      },
    ],
  },
  ({ shotNearMm, shotFarMm, closeFocusMm, diopterToSensorMm }): CloseUpPower => {
    if (shotNearMm > shotFarMm) throw new NoAnswer('shotNearMm', 'The nearest distance is beyond the farthest; exchange the two.');
    const ahead = (distanceMm: number, path: string) =>
      distanceAheadOf('close-up lens', { toSensorMm: diopterToSensorMm, distanceMm }, path) / 1000;
    const leastDpt = 1 / ahead(shotNearMm, 'shotNearMm') - 1 / ahead(closeFocusMm, 'closeFocusMm');
    return { leastDpt: Math.max(0, leastDpt), mostDpt: 1 / ahead(shotFarMm, 'shotFarMm') };
  },
);
