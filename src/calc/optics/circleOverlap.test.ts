import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { circleOverlap } from './circleOverlap.ts';

const radius = fc.double({ min: 0.5, max: 60, noNaN: true });

property.prop([radius, radius, fc.double({ min: 0, max: 1.2, noNaN: true })])('equals the area counted in thin strips', (a, b, part) => {
  const d = part * (a + b);
  // The chord both circles share at each height, summed by the midpoint rule.
  const strips = 20_000;
  const tallest = Math.min(a, b);
  let counted = 0;
  for (let strip = 0; strip < strips; strip += 1) {
    const y = ((strip + 0.5) / strips) * tallest;
    const [halfA, halfB] = [Math.sqrt(a * a - y * y), Math.sqrt(b * b - y * y)];
    counted += 2 * (tallest / strips) * Math.max(0, Math.min(halfA, d + halfB) - Math.max(-halfA, d - halfB));
  }
  const { areaMm2, fractionOfA } = circleOverlap({ radiusAMm: a, radiusBMm: b, separationMm: d });
  expect(Math.abs(areaMm2 - counted)).toBeLessThan(1e-5 * Math.PI * tallest ** 2);
  expect(fractionOfA).toBeLessThanOrEqual(1);
});

property.prop([radius, radius, fc.double({ min: 0, max: 130, noNaN: true })])('is the same from either circle', (a, b, separationMm) => {
  const one = circleOverlap({ radiusAMm: a, radiusBMm: b, separationMm }).areaMm2;
  expect(circleOverlap({ radiusAMm: b, radiusBMm: a, separationMm }).areaMm2).toBeCloseTo(one, 9);
});

test('touching circles share nothing, one inside the other all of itself', () => {
  expect(circleOverlap({ radiusAMm: 3, radiusBMm: 2, separationMm: 5 }).areaMm2).toBe(0);
  expect(circleOverlap({ radiusAMm: 2, radiusBMm: 3, separationMm: 1 }).fractionOfA).toBe(1);
  expect(circleOverlap({ radiusAMm: 2, radiusBMm: 2, separationMm: 0 }).fractionOfA).toBe(1);
});

test('a negative separation is refused', () => {
  expect(circleOverlap.answer({ radiusAMm: 1, radiusBMm: 1, separationMm: -1 })).toMatchObject({ ok: false, faults: [{ path: 'separationMm' }] });
});
