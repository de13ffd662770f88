import { calculator } from '../calculator.ts';
import { between, finite, inputs, positive } from '../inputs.ts';
import { weightN } from './gravity.ts';

export interface Counterbalance {
  springNm: number;
  momentNm: number;
  leftOverNm: number;
}

/** What a tripod head must hold. A load slid to balance leaves nothing over; the height of its centre then asks for the spring. */
export const counterbalance = calculator(
  {
    name: 'mechanics.counterbalance',
    sentence: 'Moment of a camera about the tilt axis of its head, and the counterbalance it asks for.',
    inputs: inputs({
      massG: positive('g', 'mass on the head'),
      aboveAxisMm: finite('mm', 'its centre of mass above the tilt axis, level; negative: below'),
      aheadOfAxisMm: finite('mm', 'its centre of mass ahead of the tilt axis, level; negative: behind'),
      tiltDeg: between(-90, 90, 'deg', 'tilt forward and down'),
    }),
    results: {
      springNm: 'N·m, counterbalance that holds it at every tilt once it is slid to balance; the figure heads are rated by',
      momentNm: 'N·m at this tilt, positive: falls forward',
      leftOverNm: 'N·m that such a counterbalance leaves at this tilt: what drag must hold, because the plate is not slid to balance',
    },
    formula: 'spring = m·g·y;  moment = m·g·(y·sinφ + z·cosφ);  left over = moment − spring·sinφ',
    source: 'Statics; a counterbalance whose moment goes with the sine of the tilt; g = 9.80665 m/s²',
    examples: [
      {
        given: { massG: 10_000, aboveAxisMm: 125, aheadOfAxisMm: 0, tiltDeg: 90 },
        gives: { springNm: '12.258', momentNm: '12.258', leftOverNm: '0.000' }, source: 'derived',
      },
      {
        given: { massG: 10_000, aboveAxisMm: 125, aheadOfAxisMm: 20, tiltDeg: 0 }, gives: { momentNm: '1.961', leftOverNm: '1.961' },
        source: 'derived: 98.07 N at 20 mm',
      },
    ],
  },
  ({ massG, aboveAxisMm, aheadOfAxisMm, tiltDeg }): Counterbalance => {
    const weight = weightN(massG) * 1e-3;
    const tilt = (tiltDeg * Math.PI) / 180;
    const springNm = weight * aboveAxisMm;
    const leftOverNm = weight * aheadOfAxisMm * Math.cos(tilt);
    return { springNm, momentNm: springNm * Math.sin(tilt) + leftOverNm, leftOverNm };
  },
);
