import { NoAnswer } from '../../calculator.ts';
import { type Factored, factor, factorIndefinite } from '../linear/factor.ts';
import type { Frame } from './Frame.ts';
import { lessMass } from './mass.ts';
import { stiffnessMatrix } from './stiffness.ts';

type Solve = (unknowns: Float64Array) => Float64Array;

/** What loads and modes are found with; each gives a new vector. */
export interface Solvers {
  /** (K + lift·M)⁻¹. */
  readonly solve: Solve;
  /** (K + lift·M − s·M)⁻¹ for any s, and how many modes have an ω² + lift of less. */
  readonly shifted: (s: number) => { readonly solve: Solve; readonly below: number };
  /** What is added to every ω²: 0 for what stands on the ground, more for what floats. */
  readonly lift: number;
}

/** Factors a frame's stiffness once. */
export function solversFor(frame: Frame, lift = 0): { readonly solvers: Solvers; readonly freeMotions: readonly Float64Array[] } {
  const { matrix, leastDiagonal } = stiffnessMatrix(frame);
  if (!allFinite(matrix.values)) throw new NoAnswer('', 'Some stiffness here is too great to compute with. Check the units.');
  const { groups } = frame.grouping;
  const factored = factor(lift === 0 ? matrix : lessMass(matrix, groups, -lift), leastDiagonal);
  const shifted = (s: number) => {
    const indefinite = factorIndefinite(lessMass(matrix, groups, s - lift), leastDiagonal);
    return { solve: solving(indefinite), below: indefinite.negatives };
  };
  return { solvers: { solve: solving(factored), shifted, lift }, freeMotions: factored.freeMotions };
}

function solving({ solve }: Factored): Solve {
  return (unknowns) => {
    const solved = Float64Array.from(unknowns);
    solve(solved);
    return solved;
  };
}

function allFinite(values: Float64Array): boolean {
  for (let at = 0; at < values.length; at++) if (!Number.isFinite(values[at])) return false;
  return true;
}
