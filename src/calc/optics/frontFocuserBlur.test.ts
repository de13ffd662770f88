import { fc, test as property } from '@fast-check/vitest';
import { Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { frontFocuserBlur } from './frontFocuserBlur.ts';

const gap = (mm: number) => new Matrix([[1, mm], [0, 1]]);
const thin = (focalMm: number) => new Matrix([[1, 0], [-1 / focalMm, 1]]);
const ahead = fc.double({ min: 300, max: 50_000, noNaN: true });

property.prop([ahead, ahead, fc.double({ min: 25, max: 135, noNaN: true }), fc.double({ min: 1.4, max: 16, noNaN: true })])(
  'is as wide on the sensor as ray matrices spread the pupil (Hecht, Optics)',
  (s, d, focalLengthMm, fNumber) => {
    // The focuser is a lens of focal length s against the taking lens, which stands its focal length before the sensor.
    const { diameterMm } = frontFocuserBlur({
      focalLengthMm, fNumber, focusDistanceMm: s + 250, subjectDistanceMm: d + 250, focuserToSensorMm: 250,
    });
    const pupil = focalLengthMm / fNumber;
    const lenses = gap(focalLengthMm).mmul(thin(focalLengthMm)).mmul(thin(s));
    const atSensor = lenses.mmul(new Matrix([[pupil], [pupil / d]]));
    expect(diameterMm).toBeCloseTo(Math.abs(atSensor.get(0, 0)), 9);
  },
);

test('a point inside the camera is refused', () => {
  const answer = frontFocuserBlur.answer({ focalLengthMm: 50, fNumber: 2, focusDistanceMm: 1000, subjectDistanceMm: 200, focuserToSensorMm: 250 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'subjectDistanceMm', message: expect.stringContaining('where the focuser stands') }] });
});
