import { fc, test as property } from '@fast-check/vitest';
import { Matrix } from 'ml-matrix';
import { expect, test } from 'vitest';
import { anamorphPupil } from './anamorphPupil.ts';

// Ray transfer matrices (Hecht, Optics; Gerrard and Burch): a ray is height and slope; light runs from the pupil to the front.
const gap = (mm: number) => new Matrix([[1, mm], [0, 1]]);
const thin = (focalMm: number) => new Matrix([[1, 0], [-1 / focalMm, 1]]);

property.prop([
  fc.double({ min: 1.1, max: 2.2, noNaN: true }),
  fc.double({ min: 10, max: 120, noNaN: true }),
  fc.double({ min: 5, max: 150, noNaN: true }),
])('is where ray matrices image the pupil through the two elements of an afocal block', (squeeze, elementSpacingMm, rearToPupilMm) => {
  const pupil = anamorphPupil({ squeeze, elementSpacingMm, rearToPupilMm, focalLengthMm: 60, fNumber: 3 });
  // Afocal with angular squeeze: f2 = s·|f1| and t = f2 − |f1|.
  const front = elementSpacingMm / (squeeze - 1);
  const system = thin(-front).mmul(gap(elementSpacingMm)).mmul(thin(front * squeeze)).mmul(gap(rearToPupilMm));
  // From the front element onwards; the image lies behind it by the distance that makes height independent of slope.
  const imageMm = system.get(0, 1) / system.get(1, 1);
  const imaged = gap(-imageMm).mmul(system);
  expect(system.get(1, 0)).toBeCloseTo(0, 9);
  expect(pupil.horizontalDistanceMm).toBeCloseTo(imageMm, 6);
  expect(pupil.horizontalDiameterMm).toBeCloseTo(20 * imaged.get(0, 0), 6);
  expect(pupil.verticalDistanceMm).toBeCloseTo(gap(elementSpacingMm + rearToPupilMm).get(0, 1), 9);
});

test('without squeeze both meridians have the pupil of the taking lens', () => {
  const pupil = anamorphPupil({ squeeze: 1, elementSpacingMm: 50, rearToPupilMm: 40, focalLengthMm: 50, fNumber: 2 });
  expect(pupil).toEqual({ horizontalDistanceMm: 90, verticalDistanceMm: 90, horizontalDiameterMm: 25, verticalDiameterMm: 25 });
});

test('an f-number of nothing is refused', () => {
  const answer = anamorphPupil.answer({ squeeze: 2, elementSpacingMm: 80, rearToPupilMm: 60, focalLengthMm: 50, fNumber: 0 });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'fNumber' }] });
});
