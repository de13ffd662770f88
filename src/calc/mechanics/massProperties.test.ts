import { fc, test as property } from '@fast-check/vitest';
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { boxInertia, composite, tubeInertia, turned } from './massProperties.ts';
import type { Tensor } from './vector.ts';

/** A quarter turn about z: its x is the common y. */
const QUARTER: Tensor = [[0, 1, 0], [-1, 0, 0], [0, 0, 1]];

test('a box turned by a right angle is the box with its sides exchanged', () => {
  expect(turned(boxInertia(1000, [100, 200, 300]), QUARTER)).toEqual(boxInertia(1000, [200, 100, 300]));
});

test('a thin hoop and a rod: m·r² about its axis, m·l²/12 across (textbook)', () => {
  const hoop = tubeInertia(1000, { diameterMm: 200, boreMm: 200, lengthMm: 1e-6, along: 'z' });
  expect(hoop[2][2]).toBeCloseTo(0.01, 12);
  expect(hoop[0][0]).toBeCloseTo(0.005, 12);
  expect(tubeInertia(1000, { diameterMm: 1e-6, boreMm: 0, lengthMm: 600, along: 'x' })[1][1]).toBeCloseTo(0.03, 12);
});

const angle = fc.double({ min: -3, max: 3, noNaN: true });

property.prop([angle, angle])('turning keeps the principal moments, which a general library finds again', (about, then) => {
  const [c, s, d, t] = [Math.cos(about), Math.sin(about), Math.cos(then), Math.sin(then)];
  const axes: Tensor = [[c, s, 0], [-s * d, c * d, t], [s * t, -c * t, d]];
  const own = boxInertia(700, [50, 90, 170]);
  const { realEigenvalues } = new EigenvalueDecomposition(new Matrix(turned(own, axes).map((row) => [...row])), { assumeSymmetric: true });
  const principal = [own[0][0], own[1][1], own[2][2]].sort((a, b) => a - b);
  realEigenvalues.sort((a, b) => a - b).forEach((value, k) => expect(value / principal[k]!).toBeCloseTo(1, 9));
});

test('without mass, the centre is the middle', () => {
  const nothing = { massG: 0, inertiaKgM2: boxInertia(0, [1, 1, 1]) };
  expect(composite([{ ...nothing, centreMm: [0, 0, 0] }, { ...nothing, centreMm: [10, 20, 30] }]).centreMm).toEqual([5, 10, 15]);
});
