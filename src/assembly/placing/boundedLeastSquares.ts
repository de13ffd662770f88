/**
 * Bounded non-linear least squares by Levenberg and Marquardt with projection onto the bounds (Nocedal and Wright, *Numerical
 * Optimization*, chapter 10; damping by gain ratio after Nielsen, 1999). It finds a minimum near its start, no more.
 *
 * Ours because the general-purpose package for this in JavaScript fits curves: it keeps steps that make things worse, damps
 * millimetres and degrees alike, cuts at the bounds afterwards, so that it stalls there, and does not stop where the least misfit is not zero.
 */
export interface LeastSquaresProblem {
  readonly start: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly residuals: (x: Float64Array) => Float64Array;
  /** Residuals that may change with each variable, where not all do. Others are not worked out again for its slope. */
  readonly touched?: readonly (readonly Stretch[])[];
  /** The residuals of one stretch, written into `into`. */
  readonly stretch?: (x: Float64Array, stretch: Stretch, into: Float64Array) => void;
}

/** A run of residuals that are worked out together. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly key: number;
}

export interface LeastSquaresResult {
  readonly x: Float64Array;
  /** Half the sum of squares. */
  readonly cost: number;
  /** Slope of the cost along each variable. */
  readonly gradient: Float64Array;
  readonly iterations: number;
}

const MOST_ITERATIONS = 100;
/** Half the sum of squares at which nothing is left to gain: a millionth of a millimetre. */
const SOLVED = 1e-13;
/** Forward step of the slopes, mm or degrees. */
const STEP = 1e-6;

export function boundedLeastSquares(problem: LeastSquaresProblem): LeastSquaresResult {
  const { low, high } = problem;
  const n = problem.start.length;
  let x = Float64Array.from(problem.start, (value, at) => clamp(value, low[at], high[at]));
  let r = problem.residuals(x);
  let cost = halfSquares(r);
  let slopes = slopesAt(problem, x, r);
  let gradient = productWith(slopes, r);
  let [damping, growth, iterations] = [1e-4, 2, 0];
  const most = n === 0 ? 0 : MOST_ITERATIONS;
  while (iterations < most && cost > SOLVED) {
    iterations += 1;
    const held = Array.from(x, (value, at) => (value <= (low[at] ?? -Infinity) && (gradient[at] ?? 0) > 0) || (value >= (high[at] ?? Infinity) && (gradient[at] ?? 0) < 0));
    if (isFlat(gradient, slopes, held, cost)) break;
    const step = dampedStep(slopes, gradient, held, damping);
    const next = x.map((value, at) => clamp(value + (step[at] ?? 0), low[at], high[at]));
    if (next.every((value, at) => Math.abs(value - (x[at] ?? 0)) <= 1e-12 * (1 + Math.abs(value)))) break;
    const nextR = problem.residuals(next);
    const nextCost = halfSquares(nextR);
    const gain = (cost - nextCost) / Math.max(promised(slopes, gradient, next, x), 1e-300);
    if (nextCost < cost) {
      [x, r, cost] = [next, nextR, nextCost];
      slopes = slopesAt(problem, x, r);
      gradient = productWith(slopes, r);
      damping = Math.max(damping * Math.max(1 / 3, 1 - (2 * gain - 1) ** 3), 1e-13);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
      if (damping > 1e14) break;
    }
  }
  return { x, cost, gradient, iterations };
}

const clamp = (value: number, low = -Infinity, high = Infinity): number => Math.min(Math.max(value, low), high);

function halfSquares(r: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < r.length; row += 1) sum += (r[row] as number) * (r[row] as number);
  return sum / 2;
}

/** A column for each variable: how every residual changes with it. */
function slopesAt({ residuals, touched, stretch, high }: LeastSquaresProblem, x: Float64Array, r: Float64Array): Float64Array[] {
  return Array.from(x, (value, at) => {
    const step = value + STEP > (high[at] ?? Infinity) ? -STEP : STEP;
    const moved = x.slice();
    moved[at] = value + step;
    let after = r;
    if (touched === undefined || stretch === undefined) after = residuals(moved);
    else {
      after = r.slice();
      for (const one of touched[at] ?? []) stretch(moved, one, after);
    }
    return after.map((one, row) => (one - (r[row] as number)) / step);
  });
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < a.length; row += 1) sum += (a[row] as number) * (b[row] as number);
  return sum;
}

const productWith = (slopes: readonly Float64Array[], r: Float64Array): Float64Array => Float64Array.from(slopes, (column) => product(column, r));

/** Every free variable's column stands square on what is left of the residuals: cosine 1e-9 or less. */
function isFlat(gradient: Float64Array, slopes: readonly Float64Array[], held: readonly boolean[], cost: number): boolean {
  const size = Math.sqrt(2 * cost);
  return slopes.every((column, at) => held[at] === true || Math.abs(gradient[at] as number) <= 1e-9 * size * Math.sqrt(product(column, column)) + 1e-15);
}

/** What the straight-line model promises to gain by going from `x` to `next`. */
function promised(slopes: readonly Float64Array[], gradient: Float64Array, next: Float64Array, x: Float64Array): number {
  const change = new Float64Array(slopes[0]?.length ?? 0);
  let along = 0;
  slopes.forEach((column, at) => {
    const by = (next[at] as number) - (x[at] as number);
    along += (gradient[at] as number) * by;
    for (let row = 0; row < change.length; row += 1) (change[row] as number) += (column[row] as number) * by;
  });
  return -along - product(change, change) / 2;
}

/** Solves (JᵀJ + λ·diag JᵀJ)·s = −g over the free variables by Cholesky; those held at a bound stay. */
function dampedStep(slopes: readonly Float64Array[], gradient: Float64Array, held: readonly boolean[], damping: number): Float64Array {
  const free = slopes.flatMap((_, at) => (held[at] === true ? [] : [at]));
  const n = free.length;
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    const column = slopes[free[i] as number] as Float64Array;
    for (let j = 0; j <= i; j += 1) {
      let sum = product(column, slopes[free[j] as number] as Float64Array);
      if (i === j) sum += damping * sum + 1e-14;
      for (let k = 0; k < j; k += 1) sum -= (lower[i * n + k] as number) * (lower[j * n + k] as number);
      lower[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-14)) : sum / (lower[j * n + j] as number);
    }
  }
  const solved = Float64Array.from(free, (at) => -(gradient[at] as number));
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) (solved[i] as number) -= (lower[i * n + k] as number) * (solved[k] as number);
    (solved[i] as number) /= lower[i * n + i] as number;
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) (solved[i] as number) -= (lower[k * n + i] as number) * (solved[k] as number);
    (solved[i] as number) /= lower[i * n + i] as number;
  }
  const step = new Float64Array(slopes.length);
  free.forEach((at, index) => (step[at] = solved[index] as number));
  return step;
}
