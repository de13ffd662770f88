import { calculator } from '../calculator.ts';
import { between, inputs, nonNegative, positive } from '../inputs.ts';

export interface AmbientContrast {
  contrastRatio: number;
}

/** Contrast of a screen in the light it stands in. */
export const ambientContrast = calculator(
  {
    name: 'video.ambientContrast',
    sentence: 'Contrast that is left of a screen in the light that falls on it.',
    inputs: inputs({
      whiteCdPerM2: positive('cd/m²', 'white of the screen'),
      blackCdPerM2: nonNegative('cd/m²', 'black of the screen in the dark'),
      reflectance: between(0, 1, 'share', 'share of the light that the screen throws back, taken as diffuse'),
      illuminanceLux: nonNegative('lx', 'light that falls on the screen'),
    }),
    results: { contrastRatio: 'white over black as seen; null: infinite, a black screen in the dark' },
    formula: '(Lw + ρ·E/π)/(Lb + ρ·E/π)',
    source: 'A diffuse surface lit by E lux shines with ρ·E/π cd/m². Glare of a mirrored lamp or sky is not in it',
    examples: [
      {
        given: { whiteCdPerM2: 1000, blackCdPerM2: 1, reflectance: 0.01, illuminanceLux: 10_000 }, gives: { contrastRatio: '31.43' },
        source: 'derived',
      },
      {
        given: { whiteCdPerM2: 1000, blackCdPerM2: 1, reflectance: 0.01, illuminanceLux: 100_000 }, gives: { contrastRatio: '4.129' },
        source: 'derived',
      },
      {
        given: { whiteCdPerM2: 310, blackCdPerM2: 0.42, reflectance: 1, illuminanceLux: 15.707963 },
        gives: { contrastRatio: '58.1' },
        source: 'published worked case: 310 and 0.42 with 5 cd/m² thrown back',
      },
    ],
  },
  ({ whiteCdPerM2, blackCdPerM2, reflectance, illuminanceLux }): AmbientContrast => {
    const thrownBack = (reflectance * illuminanceLux) / Math.PI;
    return { contrastRatio: (whiteCdPerM2 + thrownBack) / (blackCdPerM2 + thrownBack) };
  },
);
