import * as z from 'zod';
import { calculator } from '../calculator.ts';
import { overDistance } from '../focus/overDistance.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';

export interface Breathing {
  fromShare: number;
  toShare: number;
  change: number;
}

const mark = inputs({
  distanceMm: orInfinity(positive('mm', 'distance in focus; null: infinity')),
  fieldShare: positive('ratio', 'tangent of the half angle of view there over that at infinity'),
});

/** How much the picture grows or shrinks over a rack, from measured fields. Without any, see `thinLensBreathing`. */
export const breathing = calculator(
  {
    name: 'optics.breathing',
    sentence: 'Change of the angle of view over a rack, from a few measured ones.',
    inputs: inputs({
      marks: z.array(mark).min(2).meta({ unit: '', description: 'two measured fields or more, in any order of distance' }),
      fromDistanceMm: orInfinity(positive('mm', 'distance the rack starts at, from the same datum as the marks; null: infinity')),
      toDistanceMm: orInfinity(positive('mm', 'distance the rack ends at; null: infinity')),
    }),
    results: {
      fromShare: 'field at the start over that at infinity',
      toShare: 'field at the end over that at infinity',
      change: 'field at the end over that at the start, less 1; positive: it sees more at the end',
    },
    formula: 'PCHIP of the field over 1/distance, as in focus.scale;  change = to/from − 1',
    source: 'Interpolation of measurements',
    examples: [
      {
        given: { marks: [{ distanceMm: null, fieldShare: 1 }, { distanceMm: 1000, fieldShare: 0.92 }], fromDistanceMm: 2000, toDistanceMm: 1000 },
        gives: { fromShare: '0.960', toShare: '0.920', change: '-0.0417' },
        source: 'two marks make a straight line over 1/distance; 0.92/0.96 − 1',
      },
    ],
  },
  ({ marks, fromDistanceMm, toDistanceMm }): Breathing => {
    const curve = overDistance(marks.map(({ distanceMm, fieldShare }) => ({ distanceMm, value: fieldShare })));
    return change(curve.at(fromDistanceMm, 'fromDistanceMm'), curve.at(toDistanceMm, 'toDistanceMm'));
  },
);

/** Two fields and how they differ. */
export function change(fromShare: number, toShare: number): Breathing {
  return { fromShare, toShare, change: toShare / fromShare - 1 };
}
