import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { helicoid } from './helicoid.ts';

property.prop([
  fc.double({ min: 12, max: 300, noNaN: true }),
  fc.double({ min: 1.1, max: 1000, noNaN: true }),
  fc.double({ min: 1, max: 60, noNaN: true }),
])('brings the image onto the sensor by the thin-lens equation 1/f = 1/s + 1/v', (focalLengthMm, times, leadMm) => {
  const focusDistanceMm = focalLengthMm * times;
  const { extensionMm, angleDeg } = helicoid({ focalLengthMm, focusDistanceMm, leadMm });
  expect(focalLengthMm / focusDistanceMm + focalLengthMm / (focalLengthMm + extensionMm)).toBeCloseTo(1, 9);
  expect((angleDeg / 360) * leadMm).toBeCloseTo(extensionMm, 9);
});

test('at twice the focal length it is out by one: life size', () => {
  expect(helicoid({ focalLengthMm: 50, focusDistanceMm: 100, leadMm: 50 })).toEqual({ extensionMm: 50, angleDeg: 360 });
});

test('at the focal length no travel is enough', () => {
  expect(helicoid.answer({ focalLengthMm: 50, focusDistanceMm: 50, leadMm: 25 })).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm' }] });
});
