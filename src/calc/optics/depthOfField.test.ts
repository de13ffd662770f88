import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { depthOfField } from './depthOfField.ts';

test('the handbooks print the simple form, which this meets to their digits', () => {
  // US Army course SS0507, event 10: 2 in lens, f/8, 0.002 in: H 20.8 ft, near limit at H 10.4 ft.
  const inch = 25.4;
  const foot = 304.8;
  const { hyperfocalMm, nearMm } = depthOfField({
    focalLengthMm: 2 * inch, fNumber: 8, circleOfConfusionMm: 0.002 * inch, focusDistanceMm: 20.83 * foot, from: 'lens',
  });
  expect((hyperfocalMm - 2 * inch) / foot).toBeCloseTo(20.8, 1);
  expect(nearMm / foot).toBeCloseTo(10.4, 0);
});

const lens = fc.record({ focalLengthMm: fc.double({ min: 12, max: 300, noNaN: true }), fNumber: fc.double({ min: 1, max: 32, noNaN: true }) });

property.prop([lens, fc.double({ min: 0.005, max: 0.1, noNaN: true }), fc.double({ min: 1.2, max: 200, noNaN: true })])(
  'the blur at either limit equals the circle of confusion',
  ({ focalLengthMm: f, fNumber }, circleOfConfusionMm, times) => {
    const s = f * 4 * times;
    const { nearMm, farMm } = depthOfField({ focalLengthMm: f, fNumber, focusDistanceMm: s, circleOfConfusionMm, from: 'lens' });
    const blur = (d: number) => (d === Infinity ? (f * f) / (fNumber * (s - f)) : (f * f * Math.abs(d - s)) / (fNumber * d * (s - f)));
    expect(blur(nearMm) / circleOfConfusionMm).toBeCloseTo(1, 6);
    if (farMm === Infinity) expect(blur(farMm)).toBeLessThanOrEqual(circleOfConfusionMm * (1 + 1e-9));
    else expect(blur(farMm) / circleOfConfusionMm).toBeCloseTo(1, 5);
  },
);
