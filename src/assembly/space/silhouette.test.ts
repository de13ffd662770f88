import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import type { Vector } from '../placing/Transform.ts';
import { silhouettes } from './silhouette.ts';

const box = ([x, y, z]: Vector, [a, b, c]: Vector = [0, 0, 0]): Vector[] => [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [a + (i * x) / 2, b + (j * y) / 2, c + (k * z) / 2])));
const ahead = (bodies: readonly Vector[][]) => silhouettes(bodies).find(({ along }) => along[2] === 1)!;

test('a box from the front, and at 45° across its corner: w·cos + d·sin (plane geometry)', () => {
  expect(ahead([box([100, 50, 300], [20, 200, 0])])).toMatchObject({ areaMm2: expect.closeTo(5000, 6) as number, widthMm: expect.closeTo(100, 9) as number });
  const across = silhouettes([box([100, 50, 300])]).find(({ along }) => Math.abs(along[0] - along[2]) < 1e-9);
  expect(across?.areaMm2).toBeCloseTo(50 * (100 + 300) * Math.SQRT1_2, 4);
});

test('two boxes that cross like a plus, and one behind the other: what is hidden counts once', () => {
  expect(ahead([box([90, 30, 10]), box([30, 90, 10], [0, 0, 40])]).areaMm2).toBeCloseTo(2 * 90 * 30 - 30 * 30, 6);
  expect(ahead([box([90, 30, 10]), box([90, 30, 10], [0, 0, 400])]).areaMm2).toBeCloseTo(2700, 6);
});

test('the centre of area of an L: moments by hand', () => {
  // 100 × 20 at (0, 10) and 20 × 80 at (−40, 60): 2000 and 1600 mm².
  const { areaMm2, centreMm } = ahead([box([100, 20, 5], [0, 10, 0]), box([20, 80, 5], [-40, 60, 0])]);
  expect(areaMm2).toBeCloseTo(3600, 6);
  expect(centreMm[0]).toBeCloseTo((1600 * -40) / 3600, 6);
  expect(centreMm[1]).toBeCloseTo((2000 * 10 + 1600 * 60) / 3600, 6);
});

test('triangles that cross: less than 0.2 % off where a strip’s middle stands for it', () => {
  // Right triangles with legs of 100 and 100, mirrored: together a house without its roof, 100·100 − the 50·50 notch.
  const wedge = (mirror: 1 | -1): Vector[] => [-5, 5].flatMap((z): Vector[] => [[-50 * mirror, 0, z], [50 * mirror, 0, z], [-50 * mirror, 100, z]]);
  expect(Math.abs(ahead([wedge(1), wedge(-1)]).areaMm2 / 7500 - 1)).toBeLessThan(0.002);
});

test('nothing, and a body without thickness, have no silhouette', () => {
  expect(silhouettes([])).toEqual([]);
  expect(silhouettes([[[0, 0, 0], [0, 0, 0]]])).toEqual([]);
});

const size = fc.double({ min: 5, max: 400, noNaN: true });
const spot = fc.double({ min: -300, max: 300, noNaN: true });
property.prop([fc.array(fc.record({ size: fc.tuple(size, size, size), at: fc.tuple(spot, spot, spot) }), { minLength: 1, maxLength: 8 })])('the union is at least the largest and at most the sum, from every side', (boxes) => {
  const each = boxes.map((one) => silhouettes([box(one.size, one.at)]));
  // Ends nearer than 0.05 mm are one: at most a strip so thin is missed or counted twice at each.
  const slack = 0.05 * 2 * boxes.length * boxes.reduce((sum, one) => sum + one.size[1], 0);
  for (const [at, { areaMm2 }] of silhouettes(boxes.map((one) => box(one.size, one.at))).entries()) {
    const alone = each.map((one) => one[at]?.areaMm2 ?? 0);
    expect(areaMm2).toBeGreaterThan(Math.max(...alone) * 0.999 - slack);
    expect(areaMm2).toBeLessThan(alone.reduce((sum, one) => sum + one, 0) * 1.001 + slack);
  }
});
