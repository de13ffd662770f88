import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';
import { roundSection } from './roundSection.ts';

export interface TipMass {
  frequencyHz: number;
  secondHz: number;
  thirdHz: number;
}

/**
 * Roots β·L between which each of the first three lies: heavy tips pin the end, light ones leave it free
 * (Blevins, Formulas for Natural Frequency and Mode Shape: clamped–pinned and clamped–free).
 */
const BETWEEN = [[0, 1.875_104_068_7], [3.926_602_312, 4.694_091_132_9], [7.068_582_745_6, 7.854_757_438_2]] as const;

/** A monitor on a rod, the rod's own mass included. Joints make it softer: `mechanics.network` has them. */
export const tipMass = calculator(
  {
    name: 'mechanics.tipMass',
    sentence: 'The first three bending frequencies of a round bar held at one end with a mass at the other.',
    inputs: inputs({
      lengthMm: positive('mm', 'from where it is held to the mass'),
      outerMm: positive('mm', 'outer diameter'),
      innerMm: nonNegative('mm', 'bore; 0: solid'),
      youngGPa: positive('GPa', 'modulus of elasticity'),
      densityKgPerM3: positive('kg/m³', 'density of the bar'),
      tipMassG: nonNegative('g', 'mass at its end, a point'),
    }),
    results: { frequencyHz: 'Hz, the lowest', secondHz: 'Hz, the second', thirdHz: 'Hz, the third' },
    formula: '1 + cosλ·coshλ + (M/m)·λ·(cosλ·sinhλ − sinλ·coshλ) = 0;  f = λ²/(2π)·√(EI/(ρA·L⁴))',
    source: 'Euler–Bernoulli bar, as in Blevins; bending alone',
    examples: [
      {
        given: { lengthMm: 400, outerMm: 15, innerMm: 12, youngGPa: 207, densityKgPerM3: 7850, tipMassG: 0 },
        gives: { frequencyHz: '86.25', secondHz: '540.5' },
        source: 'derived: free end, λ 1.8751 and 4.6941 (Blevins)',
      },
    ],
  },
  ({ lengthMm, outerMm, innerMm, youngGPa, densityKgPerM3, tipMassG }): TipMass => {
    if (innerMm >= outerMm) throw new NoAnswer('innerMm', `Found a bore of ${innerMm} mm in a bar of ${outerMm} mm; it must be less.`);
    const { areaMm2, bendingMm4 } = roundSection(outerMm, innerMm);
    const [length, barKg] = [lengthMm * 1e-3, densityKgPerM3 * areaMm2 * lengthMm * 1e-9];
    const unit = Math.sqrt((youngGPa * 1e9 * bendingMm4 * 1e-12) / (barKg * length ** 3)) / (2 * Math.PI);
    const hertz = ([low, high]: readonly [number, number]) => unit * rootBetween(low, high, (tipMassG * 1e-3) / barKg) ** 2;
    return { frequencyHz: hertz(BETWEEN[0]), secondHz: hertz(BETWEEN[1]), thirdHz: hertz(BETWEEN[2]) };
  },
);

/** Halving on the equation over coshλ, which keeps it small. */
function rootBetween(from: number, to: number, ratio: number): number {
  const value = (x: number) => Math.cos(x) + 1 / Math.cosh(x) + ratio * x * (Math.cos(x) * Math.tanh(x) - Math.sin(x));
  let [low, high] = [from, to];
  const rises = value(low + 1e-9) < 0;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (value(middle) < 0 === rises) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
