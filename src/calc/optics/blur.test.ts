import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { blur } from './blur.ts';

const far = fc.oneof(fc.double({ min: 500, max: 1e6, noNaN: true }), fc.constant(Infinity));

property.prop([fc.double({ min: 12, max: 135, noNaN: true }), fc.double({ min: 1, max: 22, noNaN: true }), far, far])(
  'is the cone of light from the aperture to the image, cut by the sensor',
  (f, fNumber, s, d) => {
    const imageMm = (distance: number) => 1 / (1 / f - 1 / distance);
    const cone = ((f / fNumber) * Math.abs(imageMm(d) - imageMm(s))) / imageMm(d);
    expect(blur({ focalLengthMm: f, fNumber, focusDistanceMm: s, subjectDistanceMm: d }).diameterMm).toBeCloseTo(cone, 9);
  },
);

test('infinity in focus blurs the point at infinity not at all, and a near one by f²/(N·d)', () => {
  const lens = { focalLengthMm: 50, fNumber: 2, focusDistanceMm: Infinity };
  expect(blur({ ...lens, subjectDistanceMm: Infinity }).diameterMm).toBe(0);
  expect(blur({ ...lens, subjectDistanceMm: 1250 }).diameterMm).toBe(1);
});

test('a focus within the focal length is refused', () => {
  const answer = blur.answer({ focalLengthMm: 50, fNumber: 2, focusDistanceMm: 50, subjectDistanceMm: 1000 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm', message: expect.stringContaining('50 mm') }] });
});
