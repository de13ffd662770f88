import { expect, test } from 'vitest';
import { delayError } from './delayError.ts';

test('a walking subject and the mean human reaction alone: a third of a metre', () => {
  // Woods et al. 2015: simple visual reaction 231 ms. A walk of 1.4 m/s: common practice.
  expect(delayError({ subjectSpeedMps: 1.4, delayMs: 231 }).lagMm).toBeCloseTo(323, 0);
});

test('no delay or no movement, no lag; a negative delay is refused', () => {
  expect(delayError({ subjectSpeedMps: 2, delayMs: 0 }).lagMm).toBe(0);
  expect(delayError({ subjectSpeedMps: 0, delayMs: 200 }).lagMm).toBe(0);
  expect(delayError.answer({ subjectSpeedMps: 1, delayMs: -5 })).toMatchObject({ ok: false, faults: [{ path: 'delayMs' }] });
});
