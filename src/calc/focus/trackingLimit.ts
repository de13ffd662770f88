import { calculator } from '../calculator.ts';
import { between, inputs, positive } from '../inputs.ts';

export interface TrackingLimit {
  crossoverRadPerS: number;
  rampErrorS: number;
}

/** How fast a puller can follow by the picture alone: the whole delay, puller included, sets the pace. */
export const trackingLimit = calculator(
  {
    name: 'focus.trackingLimit',
    sentence: 'Fastest crossover at which following the picture stays steady under a delay, and how far it trails a steady movement.',
    inputs: inputs({
      delayMs: positive('ms', 'whole delay around the loop: picture, puller, control, motor'),
      phaseMarginDeg: between(0, 90, 'deg', 'phase margin that is kept; 0: the edge of hunting'),
    }),
    results: {
      crossoverRadPerS: 'rad/s, crossover frequency',
      rampErrorS: 's, how long it trails a steady movement: the error is the speed times this; null: never follows',
    },
    formula: 'ωc = (π/2 − φ)/τ;  ramp error = 1/ωc',
    source: 'Crossover model, YpYc = ωc·e^(−jωτ)/jω: McRuer & Jex 1967. No study concerns focus pulling itself',
    examples: [
      { given: { delayMs: 300, phaseMarginDeg: 40 }, gives: { crossoverRadPerS: '2.9089', rampErrorS: '0.3438' }, source: 'derived: 50° over 0.3 s' },
      {
        given: { delayMs: 200, phaseMarginDeg: 44.163 },
        gives: { crossoverRadPerS: '4.0000', rampErrorS: '0.25000' },
        source: 'derived: ωc 4, τ 0.20 → margin 44.163°',
      },
    ],
  },
  ({ delayMs, phaseMarginDeg }): TrackingLimit => {
    const crossoverRadPerS = ((90 - phaseMarginDeg) * Math.PI) / 180 / (delayMs / 1000);
    return { crossoverRadPerS, rampErrorS: 1 / crossoverRadPerS };
  },
);
