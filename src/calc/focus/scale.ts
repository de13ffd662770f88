import * as z from 'zod';
import { calculator, NoAnswer } from '../calculator.ts';
import { finite, inputs, orInfinity, positive } from '../inputs.ts';
import { focusScale } from './focusScale.ts';

export interface Scale {
  angleDeg?: number;
  distanceMm?: number;
}

const mark = inputs({
  distanceMm: orInfinity(positive('mm', 'distance at the mark; null: the infinity mark')),
  angleDeg: finite('deg', 'how far the ring stands there, from any zero'),
});
const AT_DISTANCE = { unit: 'mm', description: 'give this to get the angle there; null: infinity; from the same datum as the marks' };
const AT_ANGLE = { unit: 'deg', description: 'give this instead to get the distance there' };

/** One case at a time; in loops prepare a `focusScale` once. */
export const scale = calculator(
  {
    name: 'focus.scale',
    sentence: 'Angle of a focus ring at a distance, or distance at an angle, from a few measured marks.',
    inputs: inputs({
      marks: z.array(mark).min(2).meta({ unit: '', description: 'two marks or more in any order, angles running one way from far to near' }),
      atDistanceMm: orInfinity(positive('mm', AT_DISTANCE.description)).optional().meta(AT_DISTANCE),
      atAngleDeg: finite('deg', AT_ANGLE.description).optional().meta(AT_ANGLE),
    }),
    results: {
      angleDeg: 'deg, where the ring stands at the distance asked',
      distanceMm: 'mm, distance at the angle asked, from the datum of the marks; null: infinity',
    },
    formula:
      'PCHIP of the angle over 1/distance: cubic pieces, slopes the weighted harmonic mean of their neighbours, three-point ends;  ' +
      'the distance solves the same cubic',
    source: "Fritsch & Butland 1984; ends as in SciPy's PchipInterpolator. Over 1/distance a thin lens on a helicoid is nearly a straight line",
    examples: [
      {
        given: {
          marks: [
            { distanceMm: null, angleDeg: 0 }, { distanceMm: 2000, angleDeg: 60 }, { distanceMm: 1000, angleDeg: 150 },
          ],
          atDistanceMm: 4000,
        },
        gives: { angleDeg: '26.625' },
        source: 'derived by hand: end slope 90 000, inner slope 144 000 deg·mm, halfway between the marks 30 + 0.0005·(90 000 − 144 000)/8',
      },
      {
        given: { marks: [{ distanceMm: 1000, angleDeg: 120 }, { distanceMm: null, angleDeg: 0 }], atAngleDeg: 30 },
        gives: { distanceMm: '4000.0' },
        source: 'two marks make a straight line over 1/distance',
      },
      {
        given: { marks: [{ distanceMm: 1000, angleDeg: 120 }, { distanceMm: null, angleDeg: 0 }], atAngleDeg: 0 },
        gives: { distanceMm: null },
        source: 'the infinity mark',
      },
    ],
  },
  ({ marks, atDistanceMm, atAngleDeg }): Scale => {
    const ring = focusScale(marks);
    if (atDistanceMm !== undefined && atAngleDeg === undefined) return { angleDeg: ring.angleAt(atDistanceMm) };
    if (atAngleDeg !== undefined && atDistanceMm === undefined) return { distanceMm: ring.distanceAt(atAngleDeg) };
    const found = atAngleDeg === undefined ? 'neither' : 'both';
    throw new NoAnswer('', `Found ${found} of atDistanceMm and atAngleDeg; give exactly one of them.`);
  },
);
