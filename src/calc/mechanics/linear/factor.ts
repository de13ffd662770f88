import type { Envelope } from './Envelope.ts';

/** A factored symmetric matrix that solves for any number of right-hand sides, each in place. */
export interface Factored {
  readonly solve: (rightSide: Float64Array) => void;
}

/** Of a matrix that should resist every motion. Motions that nothing resists stay zero when it solves. */
export interface FactoredDefinite extends Factored {
  /** Motions that the matrix does not resist, one vector each; empty where it is positive definite. */
  readonly freeMotions: readonly Float64Array[];
}

/** Below this a pivot of the equilibrated matrix is looked at twice. A rig of stiff and soft joints may have honest ones down there. */
const SUSPECT_PIVOT = 1e-6;
/**
 * A motion is free where its stiffness, all unknowns scaled to 1, is no more than rounding leaves of nothing: some hundred
 * times 2⁻⁵³. Honest joints may be softer than their neighbours by about ten thousand million.
 */
const FREE_STIFFNESS = 1e-13;
/** Stands in for a pivot that vanished, of a matrix that may be indefinite. */
const LEAST_PIVOT = 1e-14;

/**
 * LDLᵀ of a symmetric matrix that is at least not negative, equilibrated first: each unknown is scaled so that its diagonal
 * is 1. `leastDiagonal` is a floor for that scaling, where a diagonal below it is rounding and not stiffness.
 */
export function factor(matrix: Envelope, leastDiagonal: ArrayLike<number>): FactoredDefinite {
  const scale = scaling(matrix, leastDiagonal);
  const lower = new Triangle(matrix, scale);
  const free = lower.eliminate((row, pivot) => pivot < SUSPECT_PIVOT && pivot / squaredLength(lower.motionOf(row)) < FREE_STIFFNESS);
  return { solve: scaledSolve(lower, scale), freeMotions: free.map((at) => lower.motionOf(at).map((value, i) => value * scale[i]!)) };
}

/** Of a matrix that may resist some motions and urge on others. */
export interface FactoredIndefinite extends Factored {
  /** How many of its eigenvalues are negative (Sylvester's law of inertia). */
  readonly negatives: number;
}

/** LDLᵀ of a symmetric matrix that may be indefinite, without pivoting: good enough to point the way, not to be the last word. */
export function factorIndefinite(matrix: Envelope, leastDiagonal: ArrayLike<number>): FactoredIndefinite {
  const scale = scaling(matrix, leastDiagonal);
  const lower = new Triangle(matrix, scale);
  let negatives = 0;
  lower.eliminate((_, pivot) => {
    if (pivot < 0) negatives++;
    return false;
  });
  return { solve: scaledSolve(lower, scale), negatives };
}

function scaling(matrix: Envelope, leastDiagonal: ArrayLike<number>): Float64Array {
  const scale = new Float64Array(matrix.size);
  for (let i = 0; i < matrix.size; i++) {
    const diagonal = Math.max(Math.abs(matrix.diagonal(i)), leastDiagonal[i]!);
    scale[i] = diagonal > 0 ? 1 / Math.sqrt(diagonal) : 1;
  }
  return scale;
}

function scaledSolve(lower: Triangle, scale: Float64Array): Factored['solve'] {
  return (rightSide) => {
    for (let i = 0; i < scale.length; i++) rightSide[i]! *= scale[i]!;
    lower.solve(rightSide);
    for (let i = 0; i < scale.length; i++) rightSide[i]! *= scale[i]!;
  };
}

/** The lower triangle of the scaled matrix, which elimination turns into L, with D kept inverted. */
class Triangle {
  private readonly size: number;
  private readonly first: Int32Array;
  private readonly offset: Int32Array;
  private readonly values: Float64Array;
  /** 1/D; zero for an unknown that is free, which pins it. */
  private readonly inverse: Float64Array;

  constructor(matrix: Envelope, scale: Float64Array) {
    this.size = matrix.size;
    this.first = matrix.first;
    this.offset = matrix.offset;
    this.values = new Float64Array(matrix.values.length);
    this.inverse = new Float64Array(matrix.size);
    for (let row = 0; row < this.size; row++) {
      const offset = this.offset[row]!;
      for (let column = this.first[row]!; column <= row; column++) {
        this.values[offset + column] = matrix.values[offset + column]! * scale[row]! * scale[column]!;
      }
    }
  }

  /** Factors in place, row by row; gives the unknowns that `isFree` finds free, which it pins. */
  eliminate(isFree: (row: number, pivot: number) => boolean): number[] {
    const free: number[] = [];
    for (let row = 0; row < this.size; row++) {
      const pivot = this.eliminateRow(row);
      if (isFree(row, pivot)) free.push(row);
      else this.inverse[row] = 1 / (Math.abs(pivot) < LEAST_PIVOT ? LEAST_PIVOT : pivot);
    }
    return free;
  }

  private eliminateRow(row: number): number {
    const { first, offset, values, inverse } = this;
    const here = offset[row]!;
    const start = first[row]!;
    for (let column = start; column < row; column++) {
      const there = offset[column]!;
      let sum = values[here + column]!;
      for (let k = Math.max(start, first[column]!); k < column; k++) sum -= values[here + k]! * values[there + k]!;
      values[here + column] = sum;
    }
    let pivot = values[here + row]!;
    for (let column = start; column < row; column++) {
      const unscaled = values[here + column]!;
      const entry = unscaled * inverse[column]!;
      values[here + column] = entry;
      pivot -= unscaled * entry;
    }
    return pivot;
  }

  /** The motion in which this unknown moves by one and all before it follow without force; its pivot is its stiffness. */
  motionOf(at: number): Float64Array {
    const motion = new Float64Array(this.size);
    motion[at] = 1;
    for (let row = at; row >= 0; row--) {
      // A free unknown other than this one is pinned.
      if (row !== at && this.inverse[row] === 0) motion[row] = 0;
      const moved = motion[row]!;
      if (moved === 0) continue;
      const here = this.offset[row]!;
      for (let column = this.first[row]!; column < row; column++) motion[column]! -= this.values[here + column]! * moved;
    }
    return motion;
  }

  solve(x: Float64Array): void {
    const { first, offset, values, inverse, size } = this;
    for (let row = 0; row < size; row++) {
      const here = offset[row]!;
      let sum = x[row]!;
      for (let column = first[row]!; column < row; column++) sum -= values[here + column]! * x[column]!;
      x[row] = inverse[row] === 0 ? 0 : sum;
    }
    for (let row = 0; row < size; row++) x[row]! *= inverse[row]!;
    for (let row = size - 1; row >= 0; row--) {
      const here = offset[row]!;
      const value = x[row]!;
      if (value === 0) continue;
      for (let column = first[row]!; column < row; column++) x[column]! -= values[here + column]! * value;
    }
  }
}

function squaredLength(vector: Float64Array): number {
  let sum = 0;
  for (const value of vector) sum += value * value;
  return sum;
}
