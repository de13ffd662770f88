import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { cosineFalloff } from './cosineFalloff.ts';

property.prop([fc.double({ min: 0, max: 85, noNaN: true })])(
  'is the longer way squared, the slanting pupil and the slanting sensor together',
  (angleDeg) => {
    // Inverse square of the distance 1/cos, projected pupil cos, projected sensor cos.
    const tangent = Math.tan((angleDeg * Math.PI) / 180);
    const { share, stops } = cosineFalloff({ angleDeg });
    expect(share).toBeCloseTo(1 / (1 + tangent * tangent) ** 2, 9);
    expect(2 ** stops).toBeCloseTo(share, 9);
  },
);

test('the middle loses nothing, and the horizon is refused', () => {
  expect(cosineFalloff({ angleDeg: 0 })).toEqual({ share: 1, stops: 0 });
  expect(cosineFalloff.answer({ angleDeg: 90 })).toMatchObject({ ok: false, faults: [{ path: 'angleDeg' }] });
});
