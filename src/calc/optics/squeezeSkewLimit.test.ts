import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { squeezeSkew } from './squeezeSkew.ts';
import { squeezeSkewLimit } from './squeezeSkewLimit.ts';

property.prop([fc.double({ min: 1.05, max: 2.5, noNaN: true }), fc.double({ min: 0.01, max: 40, noNaN: true })])(
  'turned by the limit, uprights lean as allowed; where there is none, no turn leans so far',
  (squeeze, verticalLeanDeg) => {
    const { rotationDeg } = squeezeSkewLimit({ squeeze, verticalLeanDeg });
    const leanAt = (turnDeg: number) => squeezeSkew({ squeeze, rotationDeg: turnDeg, widthPx: 2, heightPx: 1 }).verticalLeanDeg;
    if (rotationDeg === Infinity) for (let turn = 0; turn <= 90; turn += 1) expect(leanAt(turn)).toBeLessThan(verticalLeanDeg);
    else expect(leanAt(rotationDeg)).toBeCloseTo(verticalLeanDeg, 6);
  },
);

test('a spherical lens never leans anything', () => expect(squeezeSkewLimit({ squeeze: 1, verticalLeanDeg: 0.1 }).rotationDeg).toBe(Infinity));

test('no lean allowed is no question', () => {
  expect(squeezeSkewLimit.answer({ squeeze: 2, verticalLeanDeg: 0 })).toMatchObject({ ok: false, faults: [{ path: 'verticalLeanDeg' }] });
});
