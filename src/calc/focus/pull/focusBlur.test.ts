import { expect, test } from 'vitest';
import { blurAt, focusBlur } from './focusBlur.ts';
import { angleOfDistance, distanceOfAngle, ringScale } from './ringScale.ts';

const marks = [
  { distanceMm: Infinity, angleDeg: 0 }, { distanceMm: 10_000, angleDeg: 14 }, { distanceMm: 3050.847457627, angleDeg: 50 },
  { distanceMm: 1000, angleDeg: 160 }, { distanceMm: 450, angleDeg: 330 },
];

test('the lens form gives the values of the equation in SMPTE RIS OpenLensIO v1.0, 4.3', () => {
  // f 50, N 2.8, focused at 3000 mm from the lens: infinity 0.302663, 10 m 0.211864 mm (numbers derived). The lens then stands
  // v = f·s/(s − f) = 50.8475 mm before the sensor.
  const v = (50 * 3000) / 2950;
  const blur = focusBlur(ringScale(marks), { focalLengthMm: 50, fNumber: 2.8 });
  expect(blurAt(blur, 50, Infinity)).toBeCloseTo(0.302663, 6);
  expect(blurAt(blur, 50, 10_000 + v)).toBeCloseTo(0.211864, 6);
  expect(blurAt(blur, 50, 3000 + v)).toBeLessThan(1e-6);
});

test('a focuser in front blurs by c at the published limits of its depth, 1/s ± cN/f²', () => {
  const offset = 200;
  const blur = focusBlur(ringScale(marks), { focalLengthMm: 85, fNumber: 2, focuserToSensorMm: offset });
  const s = 1000 - offset;
  const reach = (0.025 * 2) / (85 * 85);
  for (const limit of [1 / (1 / s + reach), 1 / (1 / s - reach)]) expect(blurAt(blur, 160, limit + offset)).toBeCloseTo(0.025, 6);
  // Further out only infinity is the limit: the blur there is f²/(N·s).
  expect(blurAt(blur, 160, Infinity)).toBeCloseTo((85 * 85) / 2 / s, 6);
});

test('ring and distance are each other\'s inverse, either way round, to far below any depth of field', () => {
  for (const turned of [marks, marks.map((mark) => ({ ...mark, angleDeg: 330 - mark.angleDeg }))]) {
    const scale = ringScale(turned);
    const blur = focusBlur(scale, { focalLengthMm: 100, fNumber: 1.4 });
    for (const { distanceMm, angleDeg } of turned) expect(angleOfDistance(scale, distanceMm)).toBeCloseTo(angleDeg, 3);
    for (let distanceMm = 451; distanceMm < 40_000; distanceMm *= 1.07) {
      const angle = angleOfDistance(scale, distanceMm);
      expect(distanceOfAngle(scale, angle) / distanceMm).toBeCloseTo(1, 3);
      expect(blurAt(blur, angle, distanceMm)).toBeLessThan(2e-4);
    }
    expect(angleOfDistance(scale, 100)).toBe(turned[4]!.angleDeg);
    expect(angleOfDistance(scale, -5)).toBe(turned[4]!.angleDeg);
  }
});
