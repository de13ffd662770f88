import { calculator } from '../calculator.ts';
import { inputs, nonNegative, positive, whole } from '../inputs.ts';
import { weightN } from './gravity.ts';

export interface StandTipping {
  marginMm: number;
  tipsAtN: number;
  tiltDeg: number;
}

/** A stand that is the same all round. Sandbags count only where they bear on the feet; overhead and outdoors a rigger decides. */
export const standTipping = calculator(
  {
    name: 'mechanics.standTipping',
    sentence: 'What it takes to tip a stand whose feet stand evenly on a circle: a push, or a slope.',
    inputs: inputs({
      footRadiusMm: positive('mm', 'radius of the circle of the feet'),
      feet: whole(3, 'count', 'feet, evenly spaced'),
      massG: positive('g', 'mass of the stand and what it carries'),
      centreHeightMm: positive('mm', 'height of its centre of mass'),
      aheadMm: nonNegative('mm', 'how far the centre of mass stands out from the middle, towards the worst edge'),
      ballastG: nonNegative('g', 'sandbags on the feet, in the middle, at floor height'),
      atHeightMm: positive('mm', 'height at which it is pushed'),
    }),
    results: {
      marginMm: 'mm, from the foot of the common centre to the edge; negative: it falls',
      tipsAtN: 'N, least horizontal push at that height that tips it',
      tiltDeg: 'deg, slope on which it tips by itself; 10 is a borrowed criterion (IEC 62368-1)',
    },
    formula: 'edge = R·cos(π/n);  margin = edge − m·a/(m + b);  tipsAt = (m + b)·g·margin/h;  tilt = atan(margin/(m·y/(m + b)))',
    source: 'Statics of rigid bodies; the 10° of IEC 62368-1 are for other equipment and only borrowed',
    examples: [
      {
        given: { footRadiusMm: 500, feet: 3, massG: 15_000, centreHeightMm: 1500, aheadMm: 0, ballastG: 0, atHeightMm: 1500 },
        gives: { marginMm: '250.0', tipsAtN: '24.5', tiltDeg: '9.46' },
        source: 'derived',
      },
    ],
  },
  ({ footRadiusMm, feet, massG, centreHeightMm, aheadMm, ballastG, atHeightMm }): StandTipping => {
    const share = massG / (massG + ballastG);
    const marginMm = footRadiusMm * Math.cos(Math.PI / feet) - aheadMm * share;
    return {
      marginMm,
      tipsAtN: (weightN(massG + ballastG) * marginMm) / atHeightMm,
      tiltDeg: (Math.atan2(marginMm, centreHeightMm * share) * 180) / Math.PI,
    };
  },
);
