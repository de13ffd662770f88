import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { depthOfField } from './depthOfField.ts';

const given = { focalLengthMm: 50, fNumber: 8, circleOfConfusionMm: 0.03, focusDistanceMm: 3000, from: 'lens' } as const;

test('an encyclopaedia prints 10467 mm for 50 mm, f/8, 0.03 mm, which has the focal length in it', () => {
  // 2500/0.24 = 10416.667, and with f 10466.667: the printed digits tell that f was added.
  const { hyperfocalMm } = depthOfField(given);
  expect(hyperfocalMm).toBeCloseTo(10_466.667, 3);
  expect(Math.round(hyperfocalMm)).toBe(10_467);
});

test('focused at the hyperfocal distance, all from its half on is sharp; at infinity, from it less one focal length', () => {
  const { hyperfocalMm } = depthOfField(given);
  const atHyperfocal = depthOfField({ ...given, focusDistanceMm: hyperfocalMm });
  expect(atHyperfocal.farMm).toBe(Infinity);
  expect(atHyperfocal.totalMm).toBe(Infinity);
  expect(atHyperfocal.nearMm).toBeCloseTo(hyperfocalMm / 2, 9);
  expect(depthOfField({ ...given, focusDistanceMm: Infinity })).toMatchObject({ nearMm: hyperfocalMm - 50, farMm: Infinity, totalMm: Infinity });
});

const lens = { focalLengthMm: fc.double({ min: 12, max: 300, noNaN: true }), fNumber: fc.double({ min: 1, max: 32, noNaN: true }) };

property.prop([fc.record(lens), fc.double({ min: 0.005, max: 0.1, noNaN: true }), fc.double({ min: 1.2, max: 200, noNaN: true })])(
  'the blur at either limit equals the circle of confusion',
  ({ focalLengthMm: f, fNumber }, circleOfConfusionMm, times) => {
    const s = f * times;
    const { nearMm, farMm } = depthOfField({ focalLengthMm: f, fNumber, focusDistanceMm: s, circleOfConfusionMm, from: 'lens' });
    // Blur by the image distances alone: aperture f/N, image of d at v(d), sensor at v(s).
    const imageMm = (d: number) => 1 / (1 / f - 1 / d);
    const blur = (d: number) => ((f / fNumber) * Math.abs(imageMm(d) - imageMm(s))) / Math.abs(imageMm(d));
    expect(blur(nearMm) / circleOfConfusionMm).toBeCloseTo(1, 6);
    if (farMm === Infinity) expect(blur(1e15)).toBeLessThanOrEqual(circleOfConfusionMm * (1 + 1e-9));
    else expect(blur(farMm) / circleOfConfusionMm).toBeCloseTo(1, 5);
  },
);

property.prop([fc.record(lens), fc.double({ min: 2, max: 500, noNaN: true })])(
  'from the sensor plane, everything moves by the image distance and the depth stays',
  ({ focalLengthMm, fNumber }, times) => {
    const s = focalLengthMm * times;
    const v = (s * focalLengthMm) / (s - focalLengthMm);
    const fromLens = depthOfField({ focalLengthMm, fNumber, circleOfConfusionMm: 0.025, focusDistanceMm: s, from: 'lens' });
    const fromSensor = depthOfField({ focalLengthMm, fNumber, circleOfConfusionMm: 0.025, focusDistanceMm: s + v, from: 'sensor' });
    expect((fromSensor.nearMm - v) / fromLens.nearMm).toBeCloseTo(1, 6);
    expect(fromSensor.hyperfocalMm).toBe(fromLens.hyperfocalMm);
    if (fromLens.farMm < 1e7) expect((fromSensor.farMm - v) / fromLens.farMm).toBeCloseTo(1, 4);
  },
);

test.each([
  ['lens', 50, '50 mm'],
  ['lens', 20, '50 mm'],
  ['sensor', 199, '200 mm'],
] as const)('from the %s, %i mm cannot be in focus, and the message says from where on', (from, focusDistanceMm, least) => {
  const answer = depthOfField.answer({ ...given, from, focusDistanceMm });
  expect(answer).toMatchObject({ ok: false, faults: [{ path: 'focusDistanceMm', message: expect.stringContaining(least) }] });
});
