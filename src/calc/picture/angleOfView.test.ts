import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { angleOfView } from './angleOfView.ts';

// A published table of angles of view for 36 × 24 mm (2006), printed to a tenth of a degree.
test.each([
  [18, 90.0, 67.4, 100.5],
  [24, 73.7, 53.1, 84.1],
  [50, 39.6, 27.0, 46.8],
  [85, 23.9, 16.1, 28.6],
  [135, 15.2, 10.2, 18.2],
])('%i mm on 36 × 24 sees what the table prints', (focalLengthMm, across, up, corner) => {
  const seen = angleOfView({ focalLengthMm, sensorWidthMm: 36, sensorHeightMm: 24, squeeze: 1 });
  for (const [ours, printed] of [[seen.horizontalDeg, across], [seen.verticalDeg, up], [seen.diagonalDeg, corner]] as const) {
    expect(Math.abs(ours - printed)).toBeLessThanOrEqual(0.05 + 1e-9);
  }
});

test('a 2:1 lens does not double the angle', () => {
  const sensor = { focalLengthMm: 50, sensorWidthMm: 21.9964, sensorHeightMm: 18.5928 };
  const plain = angleOfView({ ...sensor, squeeze: 1 });
  const wide = angleOfView({ ...sensor, squeeze: 2 });
  expect(plain.horizontalDeg).toBeCloseTo(24.8109, 4);
  expect(wide.horizontalDeg).toBeLessThan(2 * plain.horizontalDeg);
  expect(wide.verticalDeg).toBe(plain.verticalDeg);
});

const mm = fc.double({ min: 4, max: 300, noNaN: true });

property.prop([mm, mm, mm, fc.double({ min: 1, max: 2, noNaN: true })])(
  'squeeze sees across as a lens shorter by the squeeze would',
  (focalLengthMm, sensorWidthMm, sensorHeightMm, squeeze) => {
    const squeezed = angleOfView({ focalLengthMm, sensorWidthMm, sensorHeightMm, squeeze });
    const shorter = angleOfView({ focalLengthMm: focalLengthMm / squeeze, sensorWidthMm, sensorHeightMm, squeeze: 1 });
    expect(squeezed.horizontalDeg).toBeCloseTo(shorter.horizontalDeg, 9);
    expect(squeezed.diagonalDeg).toBeLessThan(180);
    expect(squeezed.diagonalDeg).toBeGreaterThan(Math.max(squeezed.horizontalDeg, squeezed.verticalDeg));
  },
);

test('a focal length given as text is refused', () => {
  expect(angleOfView.answer({ focalLengthMm: '50mm', sensorWidthMm: 36, sensorHeightMm: 24, squeeze: 1 })).toMatchObject({
    ok: false,
    faults: [{ path: 'focalLengthMm' }],
  });
});
