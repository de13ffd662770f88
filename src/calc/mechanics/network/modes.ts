import { NoAnswer } from '../../calculator.ts';
import { largestEigen } from '../linear/largestEigen.ts';
import { endMotion } from './ends.ts';
import type { Frame } from './Frame.ts';
import { massFactor } from './mass.ts';
import { Motion } from './Motion.ts';
import type { Solvers } from './solvers.ts';

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

/**
 * The lowest modes: the largest eigenvalues 1/(ω² + lift) of Lᵀ·(K + lift·M)⁻¹·L, M = L·Lᵀ, the lift 0 on the ground. Directions
 * without mass have no row in it, which condenses them exactly; fewer massive directions than modes asked for give fewer modes.
 */
export function lowestModes(frame: Frame, { solve, shifted, lift }: Solvers, count: number): Mode[] {
  const mass = massFactor(frame.grouping.groups);
  const through = (inverse: (unknowns: Float64Array) => Float64Array) => (x: Float64Array) => mass.gather(inverse(mass.spread(x)));
  const apply = through(solve);
  const shiftedThrough = (s: number) => {
    const { solve: inverse, below } = shifted(s);
    return { apply: through(inverse), beyond: below };
  };
  if (!apply(new Float64Array(mass.columns).fill(1)).every(Number.isFinite)) {
    throw new NoAnswer('', 'These masses and stiffnesses are too far apart to compute frequencies. Check their units.');
  }
  const { values, vectors } = largestEigen({ size: mass.columns, apply, shifted: shiftedThrough }, count);
  return values.flatMap((value, k) => {
    // Too stiff to be told from rounding beside the softest.
    if (!(value > Number.EPSILON * values[0]!)) return [];
    const unknowns = solve(mass.spread(vectors[k]!)).map((one) => one / value);
    const frequencyHz = Math.sqrt(Math.max(0, 1 / value - lift)) / (2 * Math.PI);
    return [{ frequencyHz, shape: new Motion(frame, unknowns), ...energyShares(frame, unknowns) }];
  });
}

function energyShares(frame: Frame, unknowns: Float64Array): Pick<Mode, 'springShares' | 'beamShares'> {
  const springs = frame.springs.map((element) => {
    const energy = new Float64Array(6);
    if (element === undefined) return energy;
    const motion = endMotion(frame, element, unknowns);
    return energy.map((_, i) => element.ways[i]! * (motion[i + 6]! - motion[i]!) ** 2);
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
