/**
 * Bounded non-linear least squares by Levenberg and Marquardt with projection onto the bounds (Nocedal and Wright, Numerical
 * Optimization, chapter 10; the damping by gain ratio after Nielsen 1999). Ours because the general-purpose packages fit curves point
 * by point, while a rig is one small residual vector that is cheap to compute whole.
 */
export interface LeastSquaresProblem {
  readonly start: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly residuals: (x: readonly number[]) => readonly number[];
  /** The residuals after one variable has moved from the last `residuals` call, where less need be computed for that. */
  readonly partial?: (x: readonly number[], variable: number) => readonly number[];
}

export interface LeastSquaresResult {
  readonly x: readonly number[];
  /** Half the sum of squares. */
  readonly cost: number;
  readonly iterations: number;
}

const MOST_ITERATIONS = 60;
/** Half the sum of squares below which it is solved: a micrometre. */
const SOLVED = 1e-12;
const STEP = 1e-5;

export function boundedLeastSquares(problem: LeastSquaresProblem): LeastSquaresResult {
  const { low, high } = problem;
  let x = problem.start.map((value, at) => clamp(value, low[at], high[at]));
  let r = problem.residuals(x);
  let cost = halfSquares(r);
  let damping = 1e-3;
  let growth = 2;
  let iterations = 0;
  while (iterations < MOST_ITERATIONS && cost > SOLVED && x.length > 0) {
    iterations += 1;
    const { normal, gradient } = normalEquations(problem, x, r);
    const free = x.map((value, at) => !((value <= (low[at] ?? -Infinity) && (gradient[at] ?? 0) > 0) || (value >= (high[at] ?? Infinity) && (gradient[at] ?? 0) < 0)));
    if (!gradient.some((slope, at) => free[at] === true && Math.abs(slope) > 1e-12)) break;
    const step = dampedStep(normal, gradient, free, damping);
    const next = x.map((value, at) => clamp(value + (step[at] ?? 0), low[at], high[at]));
    const nextR = problem.residuals(next);
    const nextCost = halfSquares(nextR);
    if (nextCost < cost) {
      const small = cost - nextCost < 1e-10 * cost;
      [x, r, cost] = [next, nextR, nextCost];
      damping = Math.max(damping / 3, 1e-12);
      growth = 2;
      if (small) break;
    } else {
      damping *= growth;
      growth *= 2;
      if (damping > 1e12) break;
    }
  }
  return { x, cost, iterations };
}

const clamp = (value: number, low = -Infinity, high = Infinity): number => Math.min(Math.max(value, low), high);
const halfSquares = (r: readonly number[]): number => r.reduce((sum, one) => sum + one * one, 0) / 2;

function normalEquations(problem: LeastSquaresProblem, x: readonly number[], r: readonly number[]): { normal: number[][]; gradient: number[] } {
  const partial = problem.partial ?? ((at: readonly number[]) => problem.residuals(at));
  const columns = x.map((value, at) => {
    const step = value + STEP > (problem.high[at] ?? Infinity) ? -STEP : STEP;
    const moved = partial(x.with(at, value + step), at);
    return moved.map((one, row) => (one - (r[row] ?? 0)) / step);
  });
  const product = (a: readonly number[], b: readonly number[]) => a.reduce((sum, one, row) => sum + one * (b[row] ?? 0), 0);
  return { normal: columns.map((a) => columns.map((b) => product(a, b))), gradient: columns.map((a) => product(a, r)) };
}

/** Solves (N + λ·(diag N + 1e-6))·s = −g over the free variables by elimination; the others stay. */
function dampedStep(normal: readonly (readonly number[])[], gradient: readonly number[], free: readonly boolean[], damping: number): number[] {
  const which = free.flatMap((yes, at) => (yes ? [at] : []));
  const rows = which.map((i) => [...which.map((j) => (normal[i]?.[j] ?? 0) + (i === j ? damping * ((normal[i]?.[i] ?? 0) + 1e-6) : 0)), -(gradient[i] ?? 0)]);
  const n = which.length;
  for (let pivot = 0; pivot < n; pivot += 1) {
    const head = rows[pivot] as number[];
    const diagonal = head[pivot] as number;
    if (Math.abs(diagonal) < 1e-300) continue;
    for (let row = pivot + 1; row < n; row += 1) {
      const target = rows[row] as number[];
      const factor = (target[pivot] as number) / diagonal;
      if (factor !== 0) for (let column = pivot; column <= n; column += 1) (target[column] as number) -= factor * (head[column] as number);
    }
  }
  const solution = Array.from({ length: n }, () => 0);
  for (let row = n - 1; row >= 0; row -= 1) {
    const line = rows[row] as number[];
    let rest = line[n] as number;
    for (let column = row + 1; column < n; column += 1) rest -= (line[column] as number) * (solution[column] as number);
    solution[row] = Math.abs(line[row] as number) < 1e-300 ? 0 : rest / (line[row] as number);
  }
  const step = gradient.map(() => 0);
  which.forEach((at, index) => (step[at] = solution[index] ?? 0));
  return step;
}
