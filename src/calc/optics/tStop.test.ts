import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { fNumber } from './fNumber.ts';
import { tStop } from './tStop.ts';

property.prop([fc.double({ min: 0.7, max: 64, noNaN: true }), fc.double({ min: 0.01, max: 1, noNaN: true })])(
  'passes the light of a lossless lens of that f-number, and comes back',
  (n, transmittance) => {
    const { tNumber } = tStop({ fNumber: n, transmittance });
    expect(1 / tNumber ** 2 / (transmittance / n ** 2)).toBeCloseTo(1, 9);
    expect(fNumber({ tNumber, transmittance }).fNumber).toBeCloseTo(n, 9);
  },
);

test('more light than there is, is refused', () => {
  expect(tStop.answer({ fNumber: 2, transmittance: 1.2 })).toMatchObject({ ok: false, faults: [{ path: 'transmittance' }] });
  expect(fNumber.answer({ tNumber: 2, transmittance: 0 })).toMatchObject({ ok: false, faults: [{ path: 'transmittance' }] });
});
