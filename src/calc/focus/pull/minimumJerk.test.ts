import { expect, test } from 'vitest';
import { MINIMUM_JERK_PEAK, minimumJerk } from './minimumJerk.ts';

test('it runs from rest to rest and peaks half-way at 1.875 times its mean speed (Flash & Hogan 1985)', () => {
  const step = 1e-5;
  const speed = (x: number) => (minimumJerk(x + step) - minimumJerk(x - step)) / (2 * step);
  const accel = (x: number) => (minimumJerk(x + step) - 2 * minimumJerk(x) + minimumJerk(x - step)) / (step * step);
  expect(speed(0.5)).toBeCloseTo(MINIMUM_JERK_PEAK, 8);
  expect(speed(0.45)).toBeLessThan(speed(0.5));
  expect(speed(0.55)).toBeLessThan(speed(0.5));
  expect([minimumJerk(0), minimumJerk(0.5), minimumJerk(1)]).toEqual([0, 0.5, 1]);
  for (const end of [2 * step, 1 - 2 * step]) {
    expect(speed(end)).toBeCloseTo(0, 6);
    expect(accel(end)).toBeCloseTo(0, 2);
  }
  expect([minimumJerk(-1), minimumJerk(2)]).toEqual([0, 1]);
});

test('no other quintic-like move between rests has less jerk: its jerk is that of the published optimum, 720 A²/T⁵', () => {
  const n = 2000;
  const h = 1 / n;
  const third = (x: number) => (minimumJerk(x + 2 * h) - 2 * minimumJerk(x + h) + 2 * minimumJerk(x - h) - minimumJerk(x - 2 * h)) / (2 * h * h * h);
  let sum = 0;
  for (let i = 2; i <= n - 2; i++) sum += third(i * h) * third(i * h) * h;
  expect(sum).toBeGreaterThan(700);
  expect(sum).toBeLessThan(721);
});
