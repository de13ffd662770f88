import { calculator } from '../calculator.ts';
import { inputs, positive } from '../inputs.ts';

export interface SqueezeSkewLimit {
  rotationDeg: number;
}

/** The tolerance of whatever holds the squeeze axis. */
export const squeezeSkewLimit = calculator(
  {
    name: 'optics.squeezeSkewLimit',
    sentence: 'How far the squeeze axis may turn before upright lines lean by a given angle.',
    inputs: inputs({
      squeeze: positive('ratio', 'squeeze of the lens; 1 for spherical'),
      verticalLeanDeg: positive('deg', 'lean of upright lines that is still allowed, below 90'),
    }),
    results: { rotationDeg: 'deg, turn either way that leans them so far; null: no turn does' },
    formula: 'tan φ = 2·tan λ/(|s−1| + √((s−1)² − 4·tan²λ/s)), the smaller root of optics.squeezeSkew for the lean λ',
    source: 'Derived from the matrix of optics.squeezeSkew',
    examples: [
      {
        given: { squeeze: 2, verticalLeanDeg: 0.999848 },
        gives: { rotationDeg: '1.00000' },
        source: 'derived case of optics.squeezeSkew turned round',
      },
      {
        given: { squeeze: 1.33, verticalLeanDeg: 0.329954 },
        gives: { rotationDeg: '1.00000' },
        source: 'derived case of optics.squeezeSkew turned round',
      },
    ],
  },
  ({ squeeze, verticalLeanDeg }): SqueezeSkewLimit => {
    if (verticalLeanDeg >= 90) return { rotationDeg: Infinity };
    const lean = Math.tan((verticalLeanDeg * Math.PI) / 180);
    const inside = (squeeze - 1) ** 2 - (4 * lean * lean) / squeeze;
    if (inside < 0 || squeeze === 1) return { rotationDeg: Infinity };
    return { rotationDeg: (Math.atan((2 * lean) / (Math.abs(squeeze - 1) + Math.sqrt(inside))) * 180) / Math.PI };
  },
);
