import { fc, test as property } from '@fast-check/vitest';
import { EigenvalueDecomposition, Matrix, QrDecomposition } from 'ml-matrix';
import { expect, test } from 'vitest';
import { largestEigen } from './largestEigen.ts';
import { symmetricEigen } from './symmetricEigen.ts';

const symmetric = (size: number) =>
  fc.array(fc.integer({ min: -1e7, max: 1e7 }), { minLength: size * size, maxLength: size * size }).map((entries) => {
    const square = new Matrix(Array.from({ length: size }, (_, i) => entries.slice(i * size, i * size + size).map((entry) => entry * 1e-6)));
    return square.add(square.transpose());
  });

const matrices = fc.integer({ min: 1, max: 14 }).chain(symmetric);

property.prop([matrices])('eigenvalues are those of a general matrix library, and the vectors prove them', (matrix) => {
  const { values, vectors } = symmetricEigen(matrix.to2DArray());
  const expected = new EigenvalueDecomposition(matrix, { assumeSymmetric: true }).realEigenvalues.sort((a, b) => a - b);
  const largest = Math.max(1, ...expected.map(Math.abs));
  values.forEach((value, k) => {
    expect(Math.abs(value - expected[k]!) / largest).toBeLessThan(1e-12);
    const image = matrix.mmul(Matrix.columnVector([...vectors[k]!])).to1DArray();
    image.forEach((entry, i) => expect(Math.abs(entry - value * vectors[k]![i]!) / largest).toBeLessThan(1e-12));
    vectors.forEach((other, j) => expect(other.reduce((sum, entry, i) => sum + entry * vectors[k]![i]!, 0)).toBeCloseTo(j === k ? 1 : 0, 10));
  });
});

test('a matrix of zeros, of ones, and one of wide range', () => {
  expect([...symmetricEigen([[0, 0], [0, 0]]).values]).toEqual([0, 0]);
  const ones = symmetricEigen(Array.from({ length: 6 }, () => [1, 1, 1, 1, 1, 1])).values;
  expect(ones[5]).toBeCloseTo(6, 12);
  expect(ones[0]).toBeCloseTo(0, 12);
  expect([...symmetricEigen([[1e12, 0], [0, 1e-12]]).values]).toEqual([1e-12, 1e12]);
  const tiny = symmetricEigen([[-4e-15, 5e-324, -3e-182], [5e-324, 0, 0], [-3e-182, 0, 0]]);
  for (const value of tiny.values) expect(Math.abs(value)).toBeLessThan(5e-15);
});

/** An operator with the eigenvalues given, in a random orthonormal basis made by the library. */
function operatorOf(values: readonly number[]) {
  const size = values.length;
  const basis = new QrDecomposition(Matrix.random(size, size, { random: seeded() })).orthogonalMatrix;
  const made = (f: (value: number) => number) => {
    const whole = basis.mmul(Matrix.diag(values.map(f))).mmul(basis.transpose());
    return (x: Float64Array) => Float64Array.from(whole.mmul(Matrix.columnVector([...x])).to1DArray());
  };
  let calls = 0;
  const plain = made((value) => value);
  return {
    size,
    apply: (x: Float64Array) => {
      calls++;
      return plain(x);
    },
    shifted: (s: number) => ({ apply: made((value) => value / (1 - s * value)), beyond: values.filter((value) => value > 1 / s).length }),
    calls: () => calls,
  };
}

function seeded(): () => number {
  let state = 1;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}

const rising = (size: number, f: (k: number) => number) => Array.from({ length: size }, (_, k) => f(k)).sort((a, b) => b - a);

test.each([
  ['well apart', rising(120, (k) => 1 / (k + 1) ** 2)],
  ['crowded, a hundredth from first to last', rising(120, (k) => 1 + k / 12_000)],
  ['all equal', rising(80, () => 3)],
  ['each five times over', rising(100, (k) => 1 / (1 + Math.floor(k / 5)))],
  ['three far ahead of a crowd', rising(120, (k) => (k < 3 ? 100 * (k + 1) : 1 + k / 5000))],
  ['a millionth apart at the top', rising(60, (k) => (k < 8 ? 1 + k * 1e-6 : 1 / k))],
  ['twelve orders of magnitude', rising(60, (k) => 10 ** (-k / 5))],
  ['fewer than asked for', [2, 1]],
])('finds the six largest eigenvalues it was made with: %s', (_, values) => {
  const operator = operatorOf(values);
  const found = largestEigen(operator, 6);
  expect(found.values).toHaveLength(Math.min(6, values.length));
  found.values.forEach((value, k) => expect(Math.abs(value / values[k]! - 1)).toBeLessThan(1e-8));
  // Far fewer uses than the size where they are apart: that is what it is for.
  if (values[5]! < values[0]! / 10) expect(operator.calls()).toBeLessThanOrEqual(0.8 * values.length);
});

test('gives the same digits each time', () => {
  const values = rising(90, (k) => 1 + k / 90);
  expect(largestEigen(operatorOf(values), 6)).toEqual(largestEigen(operatorOf(values), 6));
});
