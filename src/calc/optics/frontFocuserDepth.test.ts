import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { depthOfField } from './depthOfField.ts';
import { frontFocuserDepth } from './frontFocuserDepth.ts';

const given = { focalLengthMm: 50, fNumber: 2, circleOfConfusionMm: 0.025, focusDistanceMm: 1000, focuserToSensorMm: 250 };

property.prop([
  fc.record({ focalLengthMm: fc.double({ min: 25, max: 135, noNaN: true }), fNumber: fc.double({ min: 1.4, max: 22, noNaN: true }) }),
  fc.double({ min: 300, max: 30_000, noNaN: true }),
])('a ray at the pupil edge, traced through focuser and lens, lands half a circle of confusion off at either limit', (lens, ahead) => {
  const focusDistanceMm = ahead + given.focuserToSensorMm;
  const { nearMm, farMm } = frontFocuserDepth({ ...given, ...lens, focusDistanceMm });
  // Thin focuser of power 1/s touching a thin lens at infinity; the sensor stands at f. Ray from an axial point at d.
  const offAxis = (d: number) => {
    const height = lens.focalLengthMm / lens.fNumber / 2;
    const slope = height / d - height / ahead - height / lens.focalLengthMm;
    return Math.abs(height + slope * lens.focalLengthMm);
  };
  expect(offAxis(nearMm - given.focuserToSensorMm) / (given.circleOfConfusionMm / 2)).toBeCloseTo(1, 6);
  if (farMm < 1e6) expect(offAxis(farMm - given.focuserToSensorMm) / (given.circleOfConfusionMm / 2)).toBeCloseTo(1, 6);
});

test('the form for a lens that moves as a whole would flatter the depth by half at close range', () => {
  const focuser = frontFocuserDepth({ ...given, focusDistanceMm: 700 });
  const whole = depthOfField({ ...given, focusDistanceMm: 700, from: 'sensor' });
  expect(whole.totalMm / focuser.totalMm).toBeGreaterThan(1.5);
});

test('nothing focuses at or behind the focuser', () => {
  const answer = frontFocuserDepth.answer({ ...given, focusDistanceMm: 250 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm', message: expect.stringContaining('where the focuser stands') }] });
});
