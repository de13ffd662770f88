import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { infinityGap } from './infinityGap.ts';

const lens = { focalLengthMm: 50, fNumber: 2.8, circleOfConfusionMm: 0.025 };

property.prop([fc.double({ min: 1.1, max: 2.2, noNaN: true }), fc.double({ min: 500, max: 1e5, noNaN: true })])(
  'no setting of the focuser, tried one by one, leaves less than it says, and one leaves as much',
  (squeeze, takingLensFocusMm) => {
    const { defocusMm } = infinityGap({ ...lens, squeeze, takingLensFocusMm });
    const f = lens.focalLengthMm;
    // A focuser of a power: the vertical meridian images it over f, the horizontal over the shorter f/q (Newton: shift = f²·vergence).
    const error = 1 / (1 / f - 1 / takingLensFocusMm) - f;
    const worst = (vergence: number) =>
      Math.max(Math.abs(error - f * f * vergence), squeeze * Math.abs(error - (f / squeeze) ** 2 * vergence));
    let best = Infinity;
    for (let step = 0; step <= 4000; step += 1) best = Math.min(best, worst(((step / 1000) * error) / (f * f)));
    expect(best).toBeGreaterThanOrEqual(defocusMm * (1 - 1e-6));
    expect(best).toBeLessThanOrEqual(defocusMm + 2e-3 * error);
  },
);

test('a spherical block leaves nothing that the focuser cannot mend', () => {
  expect(infinityGap({ ...lens, squeeze: 1, takingLensFocusMm: 2000 }).use).toBe(0);
});

test('a taking lens focused within its focal length is refused', () => {
  expect(infinityGap.answer({ ...lens, squeeze: 2, takingLensFocusMm: 40 })).toMatchObject({ ok: false, faults: [{ path: 'takingLensFocusMm' }] });
});
