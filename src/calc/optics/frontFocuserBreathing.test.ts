import { expect, test } from 'vitest';
import { frontFocuserBreathing } from './frontFocuserBreathing.ts';

test('a ray traced from the pupil through a thin lens says the same', () => {
  const [pupilToFocuserMm, focuserToSensorMm, toDistanceMm, tangent] = [140, 220, 1500, 0.3];
  const ahead = toDistanceMm - focuserToSensorMm;
  // Thin lens of focal length `ahead`: the slope falls by height over focal length.
  const traced = (tangent - (pupilToFocuserMm * tangent) / ahead) / tangent;
  expect(frontFocuserBreathing({ pupilToFocuserMm, focuserToSensorMm, fromDistanceMm: Infinity, toDistanceMm }).toShare).toBeCloseTo(traced, 12);
});

test('a focuser at the pupil itself does not breathe', () => {
  expect(frontFocuserBreathing({ pupilToFocuserMm: 0, focuserToSensorMm: 100, fromDistanceMm: Infinity, toDistanceMm: 900 }).change).toBe(0);
});
