import { NoAnswer, calculator } from '../calculator.ts';
import { inputs, nonNegative, positive } from '../inputs.ts';

export interface ScrewJoint {
  preloadN: number;
  slipNm: number;
}

/** One screw that presses two faces together: an estimate, not a load rating. Locating pins hold by shape and are not in it. */
export const screwJoint = calculator(
  {
    name: 'mechanics.screwJoint',
    sentence: 'How hard a tightened screw presses two faces together, and the moment at which they turn on each other.',
    inputs: inputs({
      torqueNm: nonNegative('N·m', 'torque the screw is tightened with'),
      diameterMm: positive('mm', 'nominal diameter of the thread'),
      nutFactor: positive('ratio', 'nut factor K: 0.2 for dry steel; 0.15 to 0.30 is the usual scatter'),
      friction: nonNegative('ratio', 'friction between the faces'),
      innerRadiusMm: nonNegative('mm', 'inner radius of the ring where the faces touch'),
      outerRadiusMm: positive('mm', 'outer radius of that ring'),
    }),
    results: {
      preloadN: 'N, force in the screw',
      slipNm: 'N·m, moment about the screw at which the faces slip; an estimate, not a load rating',
    },
    formula: 'preload = T/(K·d);  slip = μ·F·(2/3)·(ro³ − ri³)/(ro² − ri²)',
    source: 'Short form of the torque-preload relation (Bickford; Shigley); disc clutch of even pressure (Shigley)',
    examples: [
      {
        given: { torqueNm: 2, diameterMm: 6.35, nutFactor: 0.2, friction: 0.15, innerRadiusMm: 4, outerRadiusMm: 15 },
        gives: { preloadN: '1575', slipNm: '2.495' },
        source: 'derived',
      },
    ],
  },
  ({ torqueNm, diameterMm, nutFactor, friction, innerRadiusMm: ri, outerRadiusMm: ro }): ScrewJoint => {
    if (ri >= ro) throw new NoAnswer('innerRadiusMm', `Found ${ri} mm; it must be less than the outer radius, ${ro} mm.`);
    const preloadN = torqueNm / (nutFactor * diameterMm * 1e-3);
    // (ro³ − ri³)/(ro² − ri²) without the difference, so that a thin ring keeps its digits.
    const meanRadiusM = ((2 / 3) * 1e-3 * (ro * ro + ro * ri + ri * ri)) / (ro + ri);
    return { preloadN, slipNm: friction * preloadN * meanRadiusM };
  },
);
