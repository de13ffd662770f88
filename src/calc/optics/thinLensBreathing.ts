import { calculator } from '../calculator.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';
import { type Breathing, change } from './breathing.ts';
import { magnificationAt } from './thinLens.ts';

/** An estimate for a simple lens that moves out as a whole. Cinema lenses are built to breathe less: measure where it matters. */
export const thinLensBreathing = calculator(
  {
    name: 'optics.thinLensBreathing',
    sentence: 'Change of the angle of view over a rack, of a thin lens that focuses by moving as a whole.',
    inputs: inputs({
      focalLengthMm: positive('mm', 'focal length; of an anamorphic lens the longer, vertical one'),
      fromDistanceMm: orInfinity(positive('mm', 'distance the rack starts at, from the sensor plane; null: infinity')),
      toDistanceMm: orInfinity(positive('mm', 'distance the rack ends at, from the sensor plane; null: infinity')),
    }),
    results: {
      fromShare: 'field at the start over that at infinity',
      toShare: 'field at the end over that at infinity',
      change: 'field at the end over that at the start, less 1; positive: it sees more at the end',
    },
    formula: 'share = f/v = 1/(1 + m), m as in picture.fieldAt;  change = to/from − 1',
    source: 'Thin-lens geometry, as in Ray, Applied Photographic Optics: the image scale grows with the image distance',
    examples: [
      {
        given: { focalLengthMm: 50, fromDistanceMm: null, toDistanceMm: 506.25 },
        gives: { fromShare: '1', toShare: '0.8889', change: '-0.1111' },
        source: 'thin lens at 450 mm: m = 0.125, 1/1.125',
      },
    ],
  },
  ({ focalLengthMm, fromDistanceMm, toDistanceMm }): Breathing => {
    const shareAt = (distanceMm: number, path: string) => 1 / (1 + magnificationAt(focalLengthMm, distanceMm, path));
    return change(shareAt(fromDistanceMm, 'fromDistanceMm'), shareAt(toDistanceMm, 'toDistanceMm'));
  },
);
