import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { squeezeAt } from './squeezeAt.ts';

const marks = [{ distanceMm: 800, squeeze: 1.72 }, { distanceMm: Infinity, squeeze: 2.01 }, { distanceMm: 2000, squeeze: 1.9 }];

property.prop([fc.double({ min: 800, max: 1e6, noNaN: true })])('never leaves the span of its measurements', (atDistanceMm) => {
  const { squeeze, stretch } = squeezeAt({ marks, atDistanceMm, nominalSqueeze: 2 });
  expect(squeeze).toBeGreaterThanOrEqual(1.72);
  expect(squeeze).toBeLessThanOrEqual(2.01);
  expect(squeeze * stretch).toBeCloseTo(2, 9);
});

test('is the measurement where one was made', () => {
  for (const one of marks) expect(squeezeAt({ marks, atDistanceMm: one.distanceMm, nominalSqueeze: 2 }).squeeze).toBeCloseTo(one.squeeze, 12);
});

test('does not guess nearer than it was measured', () => {
  const input = { marks: marks.slice(0, 1).concat(marks[2]!), atDistanceMm: 700, nominalSqueeze: 2 };
  const span = expect.stringContaining('800 mm to 2000 mm');
  expect(squeezeAt.answer(input)).toMatchObject({ ok: false, faults: [{ path: 'atDistanceMm', message: span }] });
});
