import { calculator } from '../calculator.ts';
import { finite, inputs, positive } from '../inputs.ts';

export interface SqueezeSkew {
  verticalLeanDeg: number;
  horizontalLeanDeg: number;
  cornerShiftPx: number;
}

/** What a turned squeeze axis does to the picture once it is widened. Upright lines lean most, by about (s − 1) times the turn. */
export const squeezeSkew = calculator(
  {
    name: 'optics.squeezeSkew',
    sentence: 'How far upright and level lines lean, and a corner moves, when the squeeze axis is out by an angle.',
    inputs: inputs({
      squeeze: positive('ratio', 'squeeze of the lens, and of the widening; 1 for spherical'),
      rotationDeg: finite('deg', 'how far the squeeze axis is out of level'),
      widthPx: positive('px', 'width of the picture once widened'),
      heightPx: positive('px', 'height of the picture'),
    }),
    results: {
      verticalLeanDeg: 'deg, lean of upright lines, without sign',
      horizontalLeanDeg: 'deg, lean of level lines, without sign',
      cornerShiftPx: 'px, how far the corner at half the width and half the height moves',
    },
    formula:
      'M = diag(s,1)·R(φ)·diag(1/s,1)·R(−φ) = [[cos²φ + s·sin²φ, (1−s)·sinφ·cosφ], [−((s−1)/s)·sinφ·cosφ, cos²φ + sin²φ/s]];  ' +
      'leans: of M·(0,1) from upright, of M·(1,0) from level;  shift = |M·p − p|, p = (w/2, h/2)',
    source: 'Derived twice, by the product of matrices and written out; determinant 1. For small turns (s−1)φ and (1−1/s)φ',
    examples: [
      {
        given: { squeeze: 2, rotationDeg: 1, widthPx: 4096, heightPx: 1716 },
        gives: { verticalLeanDeg: '0.999848', horizontalLeanDeg: '0.499734' },
        source: 'derived',
      },
      {
        given: { squeeze: 1.5, rotationDeg: 1, widthPx: 4096, heightPx: 1716 },
        gives: { verticalLeanDeg: '0.499937', horizontalLeanDeg: '0.333211' },
        source: 'derived',
      },
      {
        given: { squeeze: 1.33, rotationDeg: 1, widthPx: 4096, heightPx: 1716 },
        gives: { verticalLeanDeg: '0.329954', horizontalLeanDeg: '0.248043' },
        source: 'derived',
      },
    ],
  },
  ({ squeeze, rotationDeg, widthPx, heightPx }): SqueezeSkew => {
    const angle = (rotationDeg * Math.PI) / 180;
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    // M less the identity, so that a small turn loses no digits.
    const widening = (squeeze - 1) * sin * sin;
    const upper = (1 - squeeze) * sin * cos;
    const lower = upper / squeeze;
    const narrowing = -widening / squeeze;
    return {
      verticalLeanDeg: leanDeg(upper, 1 + narrowing),
      horizontalLeanDeg: leanDeg(lower, 1 + widening),
      cornerShiftPx: Math.hypot(widening * widthPx + upper * heightPx, lower * widthPx + narrowing * heightPx) / 2,
    };
  },
);

function leanDeg(aside: number, along: number): number {
  return (Math.atan2(Math.abs(aside), Math.abs(along)) * 180) / Math.PI;
}
