import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { exactStop } from './exactStop.ts';
import { stopsBetween } from './stopsBetween.ts';

// ISO 517 series of marks against 2^(k/2), in per cent (its rounding; 1.4, 2.8, 5.6 and 11, 22 as published, the rest exact).
test.each([
  [1, 0], [1.4, -1.01], [2, 0], [2.8, -1.01], [4, 0], [5.6, -1.01], [8, 0], [11, -2.77], [16, 0], [22, -2.77], [32, 0],
])('the mark %f is off by %f per cent', (markedNumber, percent) => {
  expect(exactStop({ markedNumber, stepsPerStop: 1 }).error * 100).toBeCloseTo(percent, 1);
});

const stops = (fromNumber: number, toNumber: number) => stopsBetween({ fromNumber, toNumber }).stops;
const number = fc.double({ min: 0.7, max: 64, noNaN: true });

property.prop([number, number, number])('stops add up along the way, and each halves the light', (a, b, c) => {
  expect(stops(a, b) + stops(b, c)).toBeCloseTo(stops(a, c), 9);
  expect(stopsBetween({ fromNumber: a, toNumber: b }).lightShare * 2 ** stops(a, b)).toBeCloseTo(1, 9);
});

property.prop([number, fc.integer({ min: 1, max: 10 })])('no mark is further than half a step from the series', (markedNumber, stepsPerStop) => {
  const { exactNumber } = exactStop({ markedNumber, stepsPerStop });
  expect(Math.abs(stopsBetween({ fromNumber: exactNumber, toNumber: markedNumber }).stops)).toBeLessThanOrEqual(0.5 / stepsPerStop + 1e-9);
});

test('stop nought is refused', () => {
  expect(stopsBetween.answer({ fromNumber: 0, toNumber: 2 })).toMatchObject({ ok: false, faults: [{ path: 'fromNumber' }] });
  expect(exactStop.answer({ markedNumber: 2, stepsPerStop: 0.5 })).toMatchObject({ ok: false, faults: [{ path: 'stepsPerStop' }] });
});
