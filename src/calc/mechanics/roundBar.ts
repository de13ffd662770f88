import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';
import { type RoundSection, roundSection } from './roundSection.ts';

export interface RoundBar extends RoundSection {
  massG: number;
}

/** A rod as a section and a weight. */
export const roundBar = calculator(
  {
    name: 'mechanics.roundBar',
    sentence: 'Area, second moments and mass of a round bar or tube.',
    inputs: inputs({
      outerMm: positive('mm', 'outer diameter'),
      innerMm: nonNegative('mm', 'bore; 0: solid'),
      lengthMm: positive('mm', 'length'),
      densityKgPerM3: positive('kg/m³', 'density; steel 7850, aluminium 2700'),
    }),
    results: {
      areaMm2: 'mm², area of the section',
      bendingMm4: 'mm⁴, second moment against bending',
      twistMm4: 'mm⁴, against twist',
      shearAreaMm2: 'mm², area that resists shear',
      massG: 'g',
    },
    formula: 'A = π(D² − d²)/4;  I = π(D⁴ − d⁴)/64;  J = 2I;  shear area by Cowper, with Poisson\'s number 0.3;  m = ρ·A·L',
    source: 'Strength of materials; Cowper, J. Appl. Mech. 33 (1966)',
    examples: [
      {
        given: { outerMm: 15, innerMm: 0, lengthMm: 300, densityKgPerM3: 7850 }, gives: { bendingMm4: '2485.05', twistMm4: '4970.1', massG: '416' },
        source: 'derived',
      },
      { given: { outerMm: 15, innerMm: 12, lengthMm: 300, densityKgPerM3: 7850 }, gives: { bendingMm4: '1467.17' }, source: 'derived' },
      { given: { outerMm: 19, innerMm: 0, lengthMm: 300, densityKgPerM3: 7850 }, gives: { bendingMm4: '6397.12' }, source: 'derived' },
    ],
  },
  ({ outerMm, innerMm, lengthMm, densityKgPerM3 }): RoundBar => {
    if (innerMm >= outerMm) throw new NoAnswer('innerMm', `Found a bore of ${innerMm} mm in a bar of ${outerMm} mm; it must be less.`);
    const section = roundSection(outerMm, innerMm);
    return { ...section, massG: densityKgPerM3 * section.areaMm2 * lengthMm * 1e-6 };
  },
);
