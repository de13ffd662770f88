import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { boundedLeastSquares } from './boundedLeastSquares.ts';

/** Moré, Garbow and Hillstrom, "Testing Unconstrained Optimization Software", ACM TOMS 7 (1981): functions, starts and least sums of squares (from memory; zeros recomputed). */
const PUBLISHED: readonly { readonly name: string; readonly start: number[]; readonly f: (x: Float64Array) => number[]; readonly least: number; readonly at?: number[] }[] = [
  { name: 'Rosenbrock', start: [-1.2, 1], f: ([a = 0, b = 0]) => [10 * (b - a * a), 1 - a], least: 0, at: [1, 1] },
  { name: 'Freudenstein and Roth, far start', start: [0.5, -2], f: ([a = 0, b = 0]) => [-13 + a + ((5 - b) * b - 2) * b, -29 + a + ((b + 1) * b - 14) * b], least: 48.984_25 },
  { name: 'Beale', start: [1, 1], f: ([a = 0, b = 0]) => [1.5 - a * (1 - b), 2.25 - a * (1 - b * b), 2.625 - a * (1 - b ** 3)], least: 0, at: [3, 0.5] },
  { name: 'Helical valley', start: [-1, 0, 0], f: ([a = 0, b = 0, c = 0]) => [10 * (c - 10 * ((Math.atan(b / a) + (a < 0 ? Math.PI : 0)) / (2 * Math.PI))), 10 * (Math.hypot(a, b) - 1), c], least: 0, at: [1, 0, 0] },
  { name: 'Powell singular', start: [3, -1, 0, 1], f: ([a = 0, b = 0, c = 0, d = 0]) => [a + 10 * b, Math.sqrt(5) * (c - d), (b - 2 * c) ** 2, Math.sqrt(10) * (a - d) ** 2], least: 0 },
  {
    name: 'Wood', start: [-3, -1, -3, -1], least: 0, at: [1, 1, 1, 1],
    f: ([a = 0, b = 0, c = 0, d = 0]) => [10 * (b - a * a), 1 - a, Math.sqrt(90) * (d - c * c), 1 - c, Math.sqrt(10) * (b + d - 2), (b - d) / Math.sqrt(10)],
  },
  {
    name: 'Bard', start: [1, 1, 1], least: 8.214_87e-3,
    f: ([a = 0, b = 0, c = 0]) => [0.14, 0.18, 0.22, 0.25, 0.29, 0.32, 0.35, 0.39, 0.37, 0.58, 0.73, 0.96, 1.34, 2.1, 4.39].map((y, at) => y - (a + (at + 1) / ((15 - at) * b + Math.min(at + 1, 15 - at) * c))),
  },
];

const free = (n: number, bound: number) => Array.from({ length: n }, () => bound);

test.each(PUBLISHED)('finds the published minimum of $name', ({ start, f, least, at }) => {
  const found = boundedLeastSquares({ start, low: free(start.length, -1e6), high: free(start.length, 1e6), residuals: (x) => Float64Array.from(f(x)) });
  expect(2 * found.cost).toBeCloseTo(least, 4);
  at?.forEach((value, index) => expect(found.x[index]).toBeCloseTo(value, 4));
});

test('stops at a bound, and the rest goes on to its best there', () => {
  // Rosenbrock with x₁ ≤ ½: the valley floor x₂ = x₁² at the bound, sum ¼ (worked by hand).
  const found = boundedLeastSquares({ start: [-1.2, 1], low: [-5, -5], high: [0.5, 5], residuals: ([a = 0, b = 0]) => Float64Array.of(10 * (b - a * a), 1 - a) });
  expect([...found.x]).toEqual([0.5, expect.closeTo(0.25, 6)]);
  expect(2 * found.cost).toBeCloseTo(0.25, 8);
});

const number = fc.integer({ min: -50, max: 50 });
const width = fc.integer({ min: 0, max: 20 });
property.prop([fc.array(fc.tuple(number, number, number), { minLength: 3, maxLength: 6 }), fc.tuple(number, number), fc.tuple(width, width)])(
  'on straight problems it meets the conditions of Karush, Kuhn and Tucker',
  (rows, [l1, l2], [w1, w2]) => {
    const [low, high] = [[l1, l2], [l1 + w1, l2 + w2]];
    const { x, gradient, cost } = boundedLeastSquares({ start: [l1, l2], low, high, residuals: ([a = 0, b = 0]) => Float64Array.from(rows, ([p, q, y]) => p * a + q * b - y) });
    x.forEach((value, at) => {
      expect(value).toBeGreaterThanOrEqual(low[at] as number);
      expect(value).toBeLessThanOrEqual(high[at] as number);
      const size = Math.sqrt(2 * cost) * Math.hypot(...rows.map((row) => row[at] as number)) * 1e-5 + 1e-5;
      if (value > (low[at] as number)) expect(gradient[at]).toBeLessThanOrEqual(size);
      if (value < (high[at] as number)) expect(gradient[at]).toBeGreaterThanOrEqual(-size);
    });
  },
);

test('nothing to vary, and variables that nothing hangs on, come back as they were', () => {
  expect(boundedLeastSquares({ start: [], low: [], high: [], residuals: () => Float64Array.of(3) })).toMatchObject({ cost: 4.5, iterations: 0 });
  const { x } = boundedLeastSquares({ start: [7, 1], low: [0, 0], high: [9, 9], residuals: ([, b = 0]) => Float64Array.of(b - 4) });
  expect([...x]).toEqual([7, expect.closeTo(4, 6)]);
});
