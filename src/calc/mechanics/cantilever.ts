import { NoAnswer, calculator } from '../calculator.ts';
import { finite, inputs, nonNegative, positive } from '../inputs.ts';
import { roundSection } from './roundSection.ts';

export interface Cantilever {
  deflectionMm: number;
  slopeDeg: number;
}

/** A rod that sticks out. Its clamp gives too, and commonly more: a whole rig wants `mechanics.network`. */
export const cantilever = calculator(
  {
    name: 'mechanics.cantilever',
    sentence: 'How far the free end of a round bar or tube that is held at one end sags and leans.',
    inputs: inputs({
      lengthMm: positive('mm', 'from where it is held to its end'),
      outerMm: positive('mm', 'outer diameter'),
      innerMm: nonNegative('mm', 'bore; 0: solid'),
      youngGPa: positive('GPa', 'modulus of elasticity'),
      forceN: finite('N', 'force across it at its end'),
      momentNmm: finite('N·mm', 'bending moment at its end, in the sense that adds to the force'),
    }),
    results: { deflectionMm: 'mm, shift of the end along the force', slopeDeg: 'deg, lean of the end' },
    formula:
      'deflection = F·L³/(3EI) + M·L²/(2EI);  slope = F·L²/(2EI) + M·L/(EI); ' +
      ' I = π(D⁴ − d⁴)/64. Bending alone: a bar not much longer than thick sags more',
    source: 'Shigley, Mechanical Engineering Design, table of beams',
    examples: [
      {
        given: { lengthMm: 200, outerMm: 15, innerMm: 12, youngGPa: 207, forceN: 20, momentNmm: 0 },
        gives: { deflectionMm: '0.17561', slopeDeg: '0.07546' },
        source: 'derived: 1.3171 mrad; formulas read',
      },
      {
        given: { lengthMm: 200, outerMm: 15, innerMm: 12, youngGPa: 207, forceN: 0, momentNmm: 5000 },
        gives: { deflectionMm: '0.32927', slopeDeg: '0.18866' },
        source: 'derived: 3.2927 mrad; formulas read',
      },
    ],
  },
  ({ lengthMm: l, outerMm, innerMm, youngGPa, forceN, momentNmm }): Cantilever => {
    if (innerMm >= outerMm) throw new NoAnswer('innerMm', `Found a bore of ${innerMm} mm in a bar of ${outerMm} mm; it must be less.`);
    const rigidityNmm2 = youngGPa * 1e3 * roundSection(outerMm, innerMm).bendingMm4;
    const slope = (l * (forceN * l * 0.5 + momentNmm)) / rigidityNmm2;
    return { deflectionMm: (l * l * ((forceN * l) / 3 + momentNmm / 2)) / rigidityNmm2, slopeDeg: (slope * 180) / Math.PI };
  },
);
