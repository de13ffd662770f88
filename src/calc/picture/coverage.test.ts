import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { coverage } from './coverage.ts';

test('the full film aperture needs a circle of 31.1 mm', () => {
  // SMPTE full aperture 0.980 × 0.735 in: a 4:3 rectangle, so the diagonal is 5/4 of the width, 1.225 in.
  const { diagonalMm } = coverage({ imageCircleMm: 31.2, sensorWidthMm: 0.98 * 25.4, sensorHeightMm: 0.735 * 25.4 });
  expect(diagonalMm).toBeCloseTo(1.225 * 25.4, 9);
});

const mm = fc.double({ min: 1, max: 100, noNaN: true });

property.prop([mm, mm, mm])('covers exactly when each corner lies in the circle', (imageCircleMm, sensorWidthMm, sensorHeightMm) => {
  const { use, marginMm } = coverage({ imageCircleMm, sensorWidthMm, sensorHeightMm });
  const cornerInside = (sensorWidthMm / 2) ** 2 + (sensorHeightMm / 2) ** 2 <= (imageCircleMm / 2) ** 2;
  if (Math.abs(use - 1) < 1e-9) return;
  expect([use < 1, marginMm > 0]).toEqual([cornerInside, cornerInside]);
});

test('an image circle of zero is refused', () => {
  const answer = coverage.answer({ imageCircleMm: 0, sensorWidthMm: 36, sensorHeightMm: 24 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'imageCircleMm' }] });
});
