import { largestEigen } from '../linear/largestEigen.ts';
import { endMotion } from './ends.ts';
import type { Frame } from './Frame.ts';
import { massFactor } from './mass.ts';
import { Motion } from './Motion.ts';

/** One way a network swings by itself. */
export interface Mode {
  readonly frequencyHz: number;
  /** Its shape, scaled so that its kinetic energy is that of 1 kg. Only the shape has meaning; magnify at will. */
  readonly shape: Motion;
  /**
   * Share of the strain energy that each spring holds, in each of its six ways: a spring stiffer by one hundredth there raises
   * the frequency by half that share of one hundredth. A rigid spring holds none.
   */
  readonly springShares: readonly Float64Array[];
  /** The same for each beam as a whole. */
  readonly beamShares: Float64Array;
}

/** What the modes are found with: K⁻¹, and (K − s·M)⁻¹ for any s with the number of modes whose ω² is less. Each gives a new vector. */
export interface Solvers {
  readonly solve: (unknowns: Float64Array) => Float64Array;
  readonly shifted: (s: number) => { readonly solve: (unknowns: Float64Array) => Float64Array; readonly below: number };
}

/**
 * The lowest modes: the largest eigenvalues 1/ω² of Lᵀ·K⁻¹·L, M = L·Lᵀ. Directions without mass have no row in it, which
 * condenses them exactly; a network with fewer massive directions than asked for has fewer modes.
 */
export function lowestModes(frame: Frame, { solve, shifted }: Solvers, count: number): Mode[] {
  const mass = massFactor(frame.grouping.groups);
  const through = (inverse: (unknowns: Float64Array) => Float64Array) => (x: Float64Array) => mass.gather(inverse(mass.spread(x)));
  const shiftedThrough = (s: number) => {
    const { solve: inverse, below } = shifted(s);
    return { apply: through(inverse), beyond: below };
  };
  const { values, vectors } = largestEigen({ size: mass.columns, apply: through(solve), shifted: shiftedThrough }, count);
  return values.flatMap((value, k) => {
    // Too stiff to be told from rounding beside the softest.
    if (!(value > Number.EPSILON * values[0]!)) return [];
    const unknowns = solve(mass.spread(vectors[k]!)).map((one) => one / value);
    return [{ frequencyHz: 1 / (2 * Math.PI * Math.sqrt(value)), shape: new Motion(frame, unknowns), ...energyShares(frame, unknowns) }];
  });
}

function energyShares(frame: Frame, unknowns: Float64Array): Pick<Mode, 'springShares' | 'beamShares'> {
  const springs = frame.springs.map((element) => {
    const energy = new Float64Array(6);
    if (element === undefined) return energy;
    const motion = endMotion(frame, element, unknowns);
    return energy.map((_, i) => element.ways![i]! * (motion[i + 6]! - motion[i]!) ** 2);
  });
  const beams = Float64Array.from(frame.beams, (element) => {
    const motion = endMotion(frame, element, unknowns);
    let sum = 0;
    for (let i = 0; i < 12; i++) for (let j = 0; j < 12; j++) sum += motion[i]! * element.stiffness[i * 12 + j]! * motion[j]!;
    return sum;
  });
  const total = springs.reduce((sum, energy) => energy.reduce((part, one) => part + one, sum), 0) + beams.reduce((sum, one) => sum + one, 0);
  return { springShares: springs.map((energy) => energy.map((one) => one / total)), beamShares: beams.map((one) => one / total) };
}
