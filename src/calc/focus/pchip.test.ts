import { readFileSync } from 'node:fs';
import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { pchip } from './pchip.ts';

interface Curve {
  readonly name: string;
  readonly x: number[];
  readonly y: number[];
  readonly at: number[];
  readonly value: number[];
  readonly slope: number[];
}
const { scipy, curves } = JSON.parse(readFileSync('reference/focus/pchip.json', 'utf8')) as { scipy: string; curves: Curve[] };

test(`is the curve of SciPy ${scipy}, value and slope`, () => {
  const errors = curves.flatMap(({ x, y, at, value, slope }) => {
    const curve = pchip({ x, y });
    const tall = Math.max(...y) - Math.min(...y);
    const steep = Math.max(...slope.map(Math.abs));
    return at.flatMap((place, k) => [(curve.evaluate(place) - value[k]!) / tall, (curve.slope(place) - slope[k]!) / steep]);
  });
  const largest = Math.max(...errors.map(Math.abs));
  const rms = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
  const [typical, worst] = [rms.toExponential(1), largest.toExponential(1)];
  process.stdout.write(`pchip against SciPy: ${errors.length} values, rms ${typical}, largest ${worst} of the range\n`);
  expect(errors.length).toBeGreaterThan(2000);
  expect(largest).toBeLessThan(1e-13);
});

test('runs back along the same curve, in the intervals of SciPy too', () => {
  const rising = curves.filter(({ y }) => y.every((height, k) => k === 0 || (height - y[k - 1]!) * (y[y.length - 1]! - y[0]!) > 0));
  expect(rising.length).toBeGreaterThan(10);
  for (const { x, y, value } of rising) {
    const curve = pchip({ x, y });
    const tall = Math.abs(y[y.length - 1]! - y[0]!);
    const within = value.filter((height) => (height - y[0]!) * (height - y[y.length - 1]!) <= 0);
    for (const height of within) expect(Math.abs(curve.evaluate(curve.inverse(height)) - height) / tall).toBeLessThan(1e-14);
  }
});

const steps = fc.array(fc.tuple(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), fc.double({ min: 1e-4, max: 1e4, noNaN: true })), {
  minLength: 1, maxLength: 12,
});
const along = (sizes: number[]) => sizes.reduce<number[]>((sums, size) => [...sums, sums[sums.length - 1]! + size], [0]);

property.prop([steps, fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean()])(
  'rises throughout where its points do, and its inverse undoes it',
  (sizes, here, there, falls) => {
    const x = along(sizes.map(([width]) => width));
    const y = along(sizes.map(([, height]) => (falls ? -height : height)));
    const curve = pchip({ x, y });
    const [low, high] = [Math.min(here, there) * curve.last, Math.max(here, there) * curve.last];
    const climb = (curve.evaluate(high) - curve.evaluate(low)) * (falls ? -1 : 1);
    const tall = Math.abs(y[y.length - 1]!);
    expect(climb).toBeGreaterThanOrEqual(-1e-13 * tall);
    const height = here * y[y.length - 1]!;
    // A place is known to a rounding of itself, and a height to as much times the slope, at most three times that of the steepest stretch (Fritsch & Carlson 1980).
    const rounding = Number.EPSILON * curve.last * 3 * Math.max(...sizes.map(([width, rise]) => rise / width));
    expect(Math.abs(curve.evaluate(curve.inverse(height)) - height)).toBeLessThan(1e-12 * tall + rounding);
  },
);

test('what was asked before does not change what is answered', () => {
  const { x, y, at } = curves[6]!;
  const warm = pchip({ x, y });
  for (const place of at.toReversed()) warm.evaluate(place);
  expect(at.map(warm.evaluate)).toEqual(at.map((place) => pchip({ x, y }).evaluate(place)));
});

test('refuses points it cannot join, places outside, and a way back where there are two', () => {
  expect(() => pchip({ x: [0], y: [1] })).toThrow(RangeError);
  expect(() => pchip({ x: [0, 0], y: [1, 2] })).toThrow(RangeError);
  expect(() => pchip({ x: [0, Number.NaN], y: [1, 2] })).toThrow(RangeError);
  const hill = pchip({ x: [0, 1, 2], y: [0, 1, 0] });
  expect(() => hill.evaluate(2.001)).toThrow(RangeError);
  expect(() => hill.evaluate(Number.NaN)).toThrow(RangeError);
  expect(() => hill.inverse(0.5)).toThrow(RangeError);
});
