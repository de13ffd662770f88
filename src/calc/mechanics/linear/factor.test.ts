import { fc, test as property } from '@fast-check/vitest';
import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { Envelope } from './Envelope.ts';
import { factor, factorIndefinite } from './factor.ts';

/** A random positive matrix with a ragged envelope, and the same as the library's. */
const ragged = fc
  .array(
    fc.record({ reach: fc.nat({ max: 8 }), entries: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }) }),
    { minLength: 1, maxLength: 40 },
  )
  .map((rows) => {
    // L with ones on its diagonal and a positive D: L·D·Lᵀ is positive, whatever the entries.
    const lower = Matrix.eye(rows.length);
    rows.forEach(({ reach, entries }, i) => entries.slice(0, Math.min(reach, i)).forEach((entry, k) => lower.set(i, i - 1 - k, entry)));
    const middle = Matrix.diag(rows.map(({ entries }) => 0.2 + Math.abs(entries[8]!)));
    const product = lower.mmul(middle).mmul(lower.transpose());
    const whole = Matrix.add(product, product.transpose()).div(2);
    const first = rows.map(({ reach }, i) => Math.max(0, i - reach));
    const matrix = new Envelope(first);
    first.forEach((from, row) => {
      for (let column = from; column <= row; column++) matrix.add(row, column, whole.get(row, column));
    });
    return { whole, matrix };
  });

property.prop([ragged])('solves as a general matrix library does', ({ whole, matrix }) => {
  const size = matrix.size;
  const rightSide = Float64Array.from({ length: size }, (_, i) => Math.sin(i + 1));
  const expected = new CholeskyDecomposition(whole).solve(Matrix.columnVector([...rightSide])).to1DArray();
  const solved = Float64Array.from(rightSide);
  const { solve, freeMotions } = factor(matrix, new Float64Array(size));
  solve(solved);
  expect(freeMotions).toEqual([]);
  const largest = Math.max(...expected.map(Math.abs));
  expected.forEach((value, i) => expect(Math.abs(solved[i]! - value) / largest).toBeLessThan(1e-9));
  const back = matrix.times(solved);
  back.forEach((value, i) => expect(value).toBeCloseTo(rightSide[i]!, 8));
});

test('of a chain of springs that touches nothing, the free motion is the chain as a whole', () => {
  const size = 50;
  const matrix = new Envelope(Array.from({ length: size }, (_, i) => Math.max(0, i - 1)));
  for (let i = 1; i < size; i++) {
    const k = 10 ** ((i % 7) - 3);
    matrix.add(i, i, k);
    matrix.add(i - 1, i - 1, k);
    matrix.add(i, i - 1, -k);
  }
  const { freeMotions } = factor(matrix, new Float64Array(size));
  expect(freeMotions).toHaveLength(1);
  for (const value of freeMotions[0]!) expect(value / freeMotions[0]![0]!).toBeCloseTo(1, 6);
});

test('a chain ten thousand million times softer at its foot is still held', () => {
  const matrix = new Envelope([0, 0, 1]);
  matrix.add(0, 0, 1e-9);
  for (const i of [1, 2]) {
    matrix.add(i, i, 10);
    matrix.add(i - 1, i - 1, 10);
    matrix.add(i, i - 1, -10);
  }
  const solved = Float64Array.from([0, 0, 1]);
  const { freeMotions, solve } = factor(matrix, new Float64Array(3));
  solve(solved);
  expect(freeMotions).toEqual([]);
  expect(solved[0]! * 1e-9).toBeCloseTo(1, 5);
});

test('counts the eigenvalues below a shift, as the roots of the chain of equal masses tell: 2 − 2cos(kπ/(n + 1))', () => {
  const size = 30;
  const roots = Array.from({ length: size }, (_, k) => 2 - 2 * Math.cos(((k + 1) * Math.PI) / (size + 1)));
  for (const shift of [0.001, 0.1, 0.77, 2.01, 3.9]) {
    const matrix = new Envelope(Array.from({ length: size }, (_, i) => Math.max(0, i - 1)));
    for (let i = 0; i < size; i++) {
      matrix.add(i, i, 2 - shift);
      if (i > 0) matrix.add(i, i - 1, -1);
    }
    expect(factorIndefinite(matrix, new Float64Array(size)).negatives).toBe(roots.filter((root) => root < shift).length);
  }
});

test('an envelope refuses entries outside itself and rows that begin beyond their diagonal', () => {
  expect(() => new Envelope([0, 2])).toThrow(RangeError);
  const matrix = new Envelope([0, 1, 0]);
  expect(() => matrix.add(1, 0, 1)).toThrow(RangeError);
  expect(() => matrix.add(0, 1, 1)).toThrow(RangeError);
  expect(matrix.at(0, 1)).toBe(0);
});
