import { RitzBasis } from './RitzBasis.ts';

/** A symmetric positive operator that is only known by what it does to a vector. Each call gives a new vector. */
export interface SymmetricOperator {
  readonly size: number;
  readonly apply: (x: Float64Array) => Float64Array;
  readonly shifted: (s: number) => Shifted;
}

export interface Shifted {
  /** A·(1 − s·A)⁻¹ times a vector, which brings eigenvalues near 1/s far forward. Need not be exact. */
  readonly apply: (x: Float64Array) => Float64Array;
  /** How many eigenvalues are greater than 1/s. */
  readonly beyond: number;
}

export interface LargestEigen {
  /** Descending. */
  readonly values: readonly number[];
  /** Unit vectors, one for each value. */
  readonly vectors: readonly Float64Array[];
}

/** Up to this size the whole space is taken: quicker than growing a basis. */
const WHOLE_UP_TO = 36;
/** Vectors beyond those asked for, in the first blocks, so that equal eigenvalues are all found. */
const GUARD = 2;
/** Residual over eigenvalue at which a pair counts as found. An eigenvalue is never further off than that, and commonly by its square. */
const SETTLED = 1e-8;
/** Plain blocks before the search turns to shifts, which cost a factoring each. */
const PLAIN_BLOCKS = 4;
/** Blocks under one shift. */
const BLOCKS_A_SHIFT = 2;
/** How far beyond the eigenvalue sought the shift stands, as a share of it: at least this, lest it only find that one. */
const LEAST_DISTANCE = 0.01;
/** How far beyond the last eigenvalue found the others are counted, as a share of it. */
const COUNT_BEYOND = 1e-6;
/** Counts that may find more than the search did, before the whole space is taken. */
const MOST_MISSES = 3;

type Found = ReturnType<RitzBasis['largest']>;

/**
 * The largest eigenvalues of a symmetric operator and their vectors, by the Rayleigh–Ritz method on a basis that grows: first
 * by what the operator makes of it (block Krylov), which finds the well separated; then, for those that crowd, by what the
 * operator shifted next to them makes of it (Ericsson & Ruhe, Math. Comp. 35, 1980). Residuals are of the plain operator, so a
 * poor shift costs time and not truth; a count by Sylvester's law of inertia shows that none was passed over; with the whole
 * space in the basis the answer is exact, so the search always ends.
 */
export function largestEigen(operator: SymmetricOperator, count: number): LargestEigen {
  const wanted = Math.min(count, operator.size);
  const basis = new RitzBasis(operator.size, operator.apply);
  if (wanted <= 0) return { values: [], vectors: [] };
  if (operator.size <= WHOLE_UP_TO) {
    basis.addUnits();
    return basis.largest(wanted);
  }
  const random = randomNumbers();
  basis.add(Array.from({ length: wanted + GUARD }, () => Float64Array.from({ length: operator.size }, random)));
  for (let block = 1; block < PLAIN_BLOCKS && !basis.whole; block++) basis.add(basis.newestImages());
  for (let missed = 0; ; ) {
    const found = basis.largest(wanted);
    if (basis.whole) return found;
    const open = openPairs(found);
    const from = open.length > 0 ? besidePair(found, open[0]!) : found.values[wanted - 1]! * (1 + COUNT_BEYOND * 4 ** missed);
    const shifted = operator.shifted(1 / from);
    if (open.length === 0) {
      if (shifted.beyond <= found.values.filter((value) => value > from).length) return found;
      missed++;
    }
    const start = open.length > 0 ? open.map((k) => found.vectors[k]!) : Array.from(
      { length: wanted }, () => Float64Array.from({ length: operator.size }, random),
    );
    basis.add(start.map(shifted.apply));
    for (let block = 1; block < BLOCKS_A_SHIFT; block++) basis.add(basis.newest().map(shifted.apply));
    // Neither the count nor the search gets further: take the whole space, which cannot fail.
    if (missed > MOST_MISSES || basis.newest().length === 0) basis.addUnits();
  }
}

/** The pairs that have not settled. */
const openPairs = ({ values, residuals }: Found): number[] => values.flatMap((value, k) => (residuals[k]! > SETTLED * value ? [k] : []));

/** Where to shift for a pair that has not settled: as far beyond it as the truth may be, and no nearer than helps its neighbours too. */
function besidePair({ values, residuals }: Found, k: number): number {
  return values[k]! * (1 + Math.max(LEAST_DISTANCE, Math.min(0.5, (2 * residuals[k]!) / values[k]!)));
}

/** The same numbers between −½ and ½ on every engine: whole-number xorshift (Marsaglia 2003). */
function randomNumbers(): () => number {
  let state = 0x9e37_79b9;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 0x1_0000_0000 - 0.5;
  };
}
