import { expect, test } from 'vitest';
import { mechanics } from '../standards/assumptions/mechanics.ts';
import { origin } from './origin.ts';

const figure = { value: 0.9, low: 0.85, high: 0.95, unit: 'ratio', basis: 'estimate' } as const;

test('even bounds are one figure either side, uneven ones are told as they are', () => {
  expect(origin(figure)).toBe('(estimate ± 0.05)');
  // 30 N, 15 to 80: half the span would be 33, and 30 − 33 is no tug at all.
  expect(origin({ ...mechanics.tugN, basis: 'assumed' })).toBe('(assumed, 15 to 80)');
});

test('what is measured or stands on a sheet is only named', () => {
  expect(origin({ ...figure, basis: 'measured' })).toBe('(measured)');
  expect(origin({ ...figure, low: 0.9, high: 0.9, basis: 'assumed' })).toBe('(assumed)');
});

test('bounds are in what the amount beside them is shown in', () => {
  expect(origin({ value: 0.05, low: 0.03, high: 0.08, unit: 'share', basis: 'assumed' })).toBe('(assumed, 3 to 8 %)');
  expect(origin({ value: 23_000, low: 10_000, high: 25_000, unit: 'g', basis: 'assumed' })).toBe('(assumed, 10 to 25 kg)');
});
