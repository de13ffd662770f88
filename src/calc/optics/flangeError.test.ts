import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { flangeError } from './flangeError.ts';
import { infinityGap } from './infinityGap.ts';

const lens = { fNumber: 2.8, circleOfConfusionMm: 0.025 };

property.prop([
  fc.double({ min: 12, max: 200, noNaN: true }),
  fc.double({ min: 0.001, max: 1, noNaN: true }),
  fc.double({ min: 1, max: 2, noNaN: true }),
])('a lens out by an error focuses where the thin-lens equation has the image that far back', (focalLengthMm, flangeErrorMm, squeeze) => {
  const out = flangeError({ ...lens, focalLengthMm, squeeze, flangeErrorMm });
  expect(focalLengthMm / out.infinityMarkFocusMm + focalLengthMm / (focalLengthMm + flangeErrorMm)).toBeCloseTo(1, 9);
  const gap = infinityGap({ ...lens, focalLengthMm, squeeze, takingLensFocusMm: out.infinityMarkFocusMm });
  expect(gap.use).toBeCloseTo(out.use, 6);
});

test('a hundredth of a millimetre too far out, and the infinity mark of an 18 mm lens focuses at 32 m', () => {
  const out = flangeError({ ...lens, focalLengthMm: 18, squeeze: 1, flangeErrorMm: 0.01 });
  expect(out.infinityMarkFocusMm / 1000).toBeCloseTo(32.4, 1);
});

test('an error given as text is refused', () => {
  const answer = flangeError.answer({ ...lens, focalLengthMm: 50, squeeze: 2, flangeErrorMm: 'some' });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'flangeErrorMm' }] });
});
