import * as z from 'zod';
import { calculator } from '../calculator.ts';
import { overDistance } from '../focus/overDistance.ts';
import { inputs, orInfinity, positive } from '../inputs.ts';

export interface SqueezeAt {
  squeeze: number;
  stretch: number;
}

const mark = inputs({
  distanceMm: orInfinity(positive('mm', 'distance of the circle that was filmed; null: infinity')),
  squeeze: positive('ratio', 'squeeze measured there: height over width of the circle as recorded'),
});

/** Front anamorphots squeeze less close up; widened by the nominal squeeze, faces there come out broad. */
export const squeezeAt = calculator(
  {
    name: 'optics.squeezeAt',
    sentence: 'Squeeze at a distance from a few measured ones, and how far the nominal widening is out there.',
    inputs: inputs({
      marks: z.array(mark).min(2).meta({ unit: '', description: 'two measured squeezes or more, in any order of distance' }),
      atDistanceMm: orInfinity(positive('mm', 'distance asked, from the same datum as the marks; null: infinity')),
      nominalSqueeze: positive('ratio', 'squeeze that the picture is widened by'),
    }),
    results: {
      squeeze: 'squeeze at that distance',
      stretch: 'width shown over true width; above 1: too broad',
    },
    formula: 'PCHIP of the squeeze over 1/distance, as in focus.scale;  stretch = nominal/squeeze',
    source: 'Interpolation of measurements; that squeeze falls close up: common practice',
    examples: [
      {
        given: { marks: [{ distanceMm: null, squeeze: 2 }, { distanceMm: 1000, squeeze: 1.8 }], atDistanceMm: 2000, nominalSqueeze: 2 },
        gives: { squeeze: '1.900', stretch: '1.0526' },
        source: 'two marks make a straight line over 1/distance; 2/1.9',
      },
    ],
  },
  ({ marks, atDistanceMm, nominalSqueeze }): SqueezeAt => {
    const curve = overDistance(marks.map(({ distanceMm, squeeze }) => ({ distanceMm, value: squeeze })));
    const squeeze = curve.at(atDistanceMm, 'atDistanceMm');
    return { squeeze, stretch: nominalSqueeze / squeeze };
  },
);
