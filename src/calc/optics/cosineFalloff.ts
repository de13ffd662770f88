import { calculator } from '../calculator.ts';
import { inputs } from '../inputs.ts';
import { halfAngle } from './halfAngle.ts';

export interface CosineFalloff {
  share: number;
  stops: number;
}

/** Darkening towards the corner of a lens without vignetting. Retrofocus lenses fall off less. */
export const cosineFalloff = calculator(
  {
    name: 'optics.cosineFalloff',
    sentence: 'Light at an angle off the axis against that in the middle, by the fourth power of the cosine.',
    inputs: inputs({ angleDeg: halfAngle('angle off the axis; half the diagonal angle of view for the corner') }),
    results: { share: 'light there over light in the middle', stops: 'the same in stops, 0 or less' },
    formula: 'share = cos⁴θ;  stops = log2(share)',
    source: 'Natural falloff, as in Ray, Applied Photographic Optics; table of Ives',
    examples: [
      { given: { angleDeg: 30 }, gives: { share: '0.5625', stops: '-0.83' }, source: 'Ives: (√3/2)⁴ = 9/16' },
      { given: { angleDeg: 10 }, gives: { share: '0.940602' }, source: 'Ives' },
      { given: { angleDeg: 20 }, gives: { share: '0.779728' }, source: 'Ives' },
      { given: { angleDeg: 40 }, gives: { share: '0.344363' }, source: 'Ives' },
      { given: { angleDeg: 50 }, gives: { share: '0.170714' }, source: 'Ives' },
    ],
  },
  ({ angleDeg }): CosineFalloff => {
    const share = Math.cos((angleDeg * Math.PI) / 180) ** 4;
    return { share, stops: Math.log2(share) };
  },
);
