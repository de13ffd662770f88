import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { angleOfView } from './angleOfView.ts';
import { fieldAt } from './fieldAt.ts';

const sensor = { sensorWidthMm: 36, sensorHeightMm: 24 };

test('a 50 mm lens one metre from the sensor stands 947.2136 mm from the field', () => {
  // Thin lens, D ≥ 4f: s = (1000 + √800000)/2, so m = (1000 − s)/s.
  const { magnification } = fieldAt({ ...sensor, focalLengthMm: 50, squeeze: 1, focusDistanceMm: 1000 });
  expect(1000 / (1 + magnification)).toBeCloseTo(947.213595, 6);
});

property.prop([
  fc.double({ min: 12, max: 300, noNaN: true }),
  fc.double({ min: 4, max: 1e6, noNaN: true }),
  fc.double({ min: 1, max: 2, noNaN: true }),
])('keeps the lens equation, and far away the field is the angle of view', (focalLengthMm, times, squeeze) => {
  const focusDistanceMm = focalLengthMm * times;
  const { widthMm, heightMm, magnification: m } = fieldAt({ ...sensor, focalLengthMm, squeeze, focusDistanceMm });
  const u = focusDistanceMm / (1 + m);
  expect(focalLengthMm / u + focalLengthMm / (u * m)).toBeCloseTo(1, 7);
  expect(widthMm / heightMm).toBeCloseTo((36 * squeeze) / 24, 9);
  if (times < 1e5) return;
  const { horizontalDeg } = angleOfView({ ...sensor, focalLengthMm, squeeze });
  expect(widthMm / (2 * focusDistanceMm * Math.tan((horizontalDeg * Math.PI) / 360))).toBeCloseTo(1, 4);
});

test('at infinity the field has no end, which is an answer', () => {
  expect(fieldAt({ ...sensor, focalLengthMm: 50, squeeze: 2, focusDistanceMm: Infinity })).toEqual({
    widthMm: Infinity, heightMm: Infinity, magnification: 0,
  });
});

test('within four focal lengths of the sensor there is no image, and the message says from where there is', () => {
  const answer = fieldAt.answer({ ...sensor, focalLengthMm: 50, squeeze: 1, focusDistanceMm: 199 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm', message: expect.stringContaining('200 mm') }] });
});
