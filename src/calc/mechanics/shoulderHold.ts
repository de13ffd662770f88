import { calculator } from '../calculator.ts';
import { finite, inputs, positive } from '../inputs.ts';
import { weightN } from './gravity.ts';

export interface ShoulderHold {
  momentNm: number;
  handForceN: number;
  padForceN: number;
}

/** What hands and shoulder carry of a rig that rests on a pad. How long is `mechanics.holdingEndurance`, a caution. */
export const shoulderHold = calculator(
  {
    name: 'mechanics.shoulderHold',
    sentence: 'Moment of a shoulder rig about its pad, and the force the hands must give to keep it level.',
    inputs: inputs({
      massG: positive('g', 'mass of the rig'),
      aheadOfPadMm: finite('mm', 'its centre of mass ahead of the middle of the pad; negative: behind'),
      handsAheadMm: positive('mm', 'the handles ahead of the middle of the pad'),
    }),
    results: {
      momentNm: 'N·m about the pad; positive: it falls forward',
      handForceN: 'N, both hands together, upwards; negative: they must pull down',
      padForceN: 'N on the shoulder; more than the weight where the hands pull down',
    },
    formula: 'moment = m·g·x;  hands = m·g·x/h;  pad = m·g − hands',
    source: 'Statics; g = 9.80665 m/s²',
    examples: [
      {
        given: { massG: 8000, aheadOfPadMm: 100, handsAheadMm: 300 }, gives: { momentNm: '7.845', handForceN: '26.15', padForceN: '52.30' },
        source: 'derived: a third of 78.45 N',
      },
      {
        given: { massG: 8000, aheadOfPadMm: 0, handsAheadMm: 300 }, gives: { momentNm: '0', handForceN: '0', padForceN: '78.45' },
        source: 'derived: balanced',
      },
    ],
  },
  ({ massG, aheadOfPadMm, handsAheadMm }): ShoulderHold => {
    const weight = weightN(massG);
    const handForceN = (weight * aheadOfPadMm) / handsAheadMm;
    return { momentNm: weight * aheadOfPadMm * 1e-3, handForceN, padForceN: weight - handForceN };
  },
);
