import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { angleOfView } from '../picture/angleOfView.ts';
import { anamorphPupil } from './anamorphPupil.ts';
import { clearOpening } from './clearOpening.ts';

const mm = fc.double({ min: 0, max: 200, noNaN: true });
const angle = fc.double({ min: 0, max: 60, noNaN: true });
const signed = fc.double({ min: -1, max: 1, noNaN: true });

property.prop([mm, mm, mm, mm, angle, angle, signed, signed, signed, signed])(
  'every ray of the picture, from anywhere in the pupil, goes through',
  (pupilWidth, across, pupilHeight, up, h, v, px, py, ax, ay) => {
    const clear = clearOpening({
      horizontalPupilMm: pupilWidth, horizontalPupilDistanceMm: across, verticalPupilMm: pupilHeight, verticalPupilDistanceMm: up,
      horizontalHalfAngleDeg: h, verticalHalfAngleDeg: v,
    });
    const x = (px * pupilWidth) / 2 + ax * across * Math.tan((h * Math.PI) / 180);
    const y = (py * pupilHeight) / 2 + ay * up * Math.tan((v * Math.PI) / 180);
    expect(Math.abs(x)).toBeLessThanOrEqual(clear.widthMm / 2 + 1e-9);
    expect(Math.abs(y)).toBeLessThanOrEqual(clear.heightMm / 2 + 1e-9);
  },
);

test('reckoned from the vertical pupil alone, a box that clears a front anamorphot would fail', () => {
  const pupil = anamorphPupil({ squeeze: 2, elementSpacingMm: 80, rearToPupilMm: 60, focalLengthMm: 50, fNumber: 2.8 });
  const view = angleOfView({ focalLengthMm: 50, sensorWidthMm: 21.9964, sensorHeightMm: 18.5928, squeeze: 2 });
  const box = {
    horizontalPupilMm: pupil.horizontalDiameterMm, verticalPupilMm: pupil.verticalDiameterMm,
    horizontalPupilDistanceMm: pupil.horizontalDistanceMm + 60, verticalPupilDistanceMm: pupil.verticalDistanceMm + 60,
    horizontalHalfAngleDeg: view.horizontalDeg / 2, verticalHalfAngleDeg: view.verticalDeg / 2,
  };
  // A 4 × 5.65 in filter stage, 138 mm wide within its rails (common practice).
  expect(clearOpening(box).widthMm).toBeLessThan(138);
  expect(clearOpening({ ...box, horizontalPupilDistanceMm: box.verticalPupilDistanceMm }).widthMm).toBeGreaterThan(138);
});

test('half an angle of 90° has no opening, and is refused', () => {
  const answer = clearOpening.answer({
    horizontalPupilMm: 10, horizontalPupilDistanceMm: 100, verticalPupilMm: 10, verticalPupilDistanceMm: 100,
    horizontalHalfAngleDeg: 90, verticalHalfAngleDeg: 10,
  });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'horizontalHalfAngleDeg' }] });
});
