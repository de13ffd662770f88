import { calculator } from '../calculator.ts';
import { inputs, nonNegative, oneOf, positive, whole } from '../inputs.ts';

export interface RodClamp {
  clampN: number;
  slipNm: number;
  slideN: number;
}

/** A split clamp on a rod: an estimate, not a load rating. Two rods side by side hold against turning by their distance as well. */
export const rodClamp = calculator(
  {
    name: 'mechanics.rodClamp',
    sentence: 'The moment at which a split clamp turns on its rod, and the force at which it slides along it.',
    inputs: inputs({
      torqueNm: nonNegative('N·m', 'torque each screw is tightened with'),
      screwDiameterMm: positive('mm', 'nominal diameter of the screw'),
      nutFactor: positive('ratio', 'nut factor K, 0.15 to 0.30'),
      screws: whole(1, 'count', 'screws that close the clamp'),
      leverRatio: positive(
        'ratio', 'pressure on the rod over force of the screw: 1 with screws on both sides; with a hinge or slit, screw to hinge over rod to hinge',
      ),
      friction: nonNegative('ratio', 'friction between rod and clamp'),
      rodDiameterMm: positive('mm', 'diameter of the rod'),
      contact: oneOf(['two lines', 'all round'], 'two lines: a bore larger than the rod, the cautious choice; all round: a bore that fits'),
    }),
    results: {
      clampN: 'N, with which the halves are drawn together at the rod',
      slipNm: 'N·m about the rod at which it turns; an estimate, not a load rating',
      slideN: 'N along the rod at which it slides',
    },
    formula: 'F = n·r·T/(K·d);  slip = κ·μ·F·D, slide = 2κ·μ·F;  κ = 1 for two lines, π/2 for even pressure all round',
    source: 'Clamped hubs as in Roloff & Matek, Maschinenelemente (from memory); κ derived: even pressure p gives F = p·D·b, its friction μ·p·π·D·b',
    examples: [
      {
        given: { torqueNm: 1, screwDiameterMm: 4, nutFactor: 0.2, screws: 1, leverRatio: 1, friction: 0.15, rodDiameterMm: 15, contact: 'two lines' },
        gives: { clampN: '1250', slipNm: '2.8125', slideN: '375' },
        source: 'derived: 0.15 × 1250 N × 15 mm',
      },
    ],
  },
  ({ torqueNm, screwDiameterMm, nutFactor, screws, leverRatio, friction, rodDiameterMm, contact }): RodClamp => {
    const clampN = (screws * leverRatio * torqueNm) / (nutFactor * screwDiameterMm * 1e-3);
    const slideN = 2 * (contact === 'two lines' ? 1 : Math.PI / 2) * friction * clampN;
    return { clampN, slipNm: (slideN * rodDiameterMm * 1e-3) / 2, slideN };
  },
);
