import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { depthOfField } from './depthOfField.ts';
import { simpleDepth } from './simpleDepth.ts';

const INCH = 25.4;
const FOOT = 304.8;
const inFeet = (f: number, fNumber: number, c: number, s: number) => {
  const depth = simpleDepth({ focalLengthMm: f * INCH, fNumber, circleOfConfusionMm: c * INCH, focusDistanceMm: s * FOOT });
  return { hyperfocal: depth.hyperfocalMm / FOOT, near: depth.nearMm / FOOT, far: depth.farMm / FOOT };
};

test('US Army course SS0507, events 10 and 12 (printed digits; the second cut, not rounded)', () => {
  const atHyperfocal = inFeet(2, 8, 0.002, 20.8333);
  expect(atHyperfocal.hyperfocal).toBeCloseTo(20.8, 1);
  expect(atHyperfocal.near).toBeCloseTo(10.4, 1);
  const cut = inFeet(3, 8, 0.002, 15);
  expect(Math.floor(cut.hyperfocal * 10) / 10).toBe(46.8);
  expect(Math.floor(cut.near * 10) / 10).toBe(11.3);
  expect(Math.floor(cut.far)).toBe(22);
});

test('US Navy NAVEDTRA 14209: 6.1 in, hyperfocal 554 ft, at 10 ft → 9.8 and 10.2 ft', () => {
  // The course gives H and not the circle of confusion, so f²/(N·c) is made to be 554 ft.
  const { hyperfocal, near, far } = inFeet(6.1, 1, 6.1 ** 2 / (554 * 12), 10);
  expect([hyperfocal, near, far].map((feet) => feet.toFixed(1))).toEqual(['554.0', '9.8', '10.2']);
});

test('Barnet Book of Photography: 6 in, f/8, 1/100 in → 450 in = 37.5 ft', () => {
  expect(inFeet(6, 8, 0.01, 10).hyperfocal).toBeCloseTo(37.5, 9);
});

property.prop([fc.integer({ min: 2, max: 30 }), fc.double({ min: 1000, max: 1e6, noNaN: true })])(
  "Piper's rule: focused at H/n, sharp from H/(n+1) to H/(n−1) (Sinclair, Handbook of Photography)",
  (n, hyperfocalMm) => {
    const depth = simpleDepth({ focalLengthMm: 100, fNumber: 1, circleOfConfusionMm: 1e4 / hyperfocalMm, focusDistanceMm: hyperfocalMm / n });
    expect(depth.nearMm / (hyperfocalMm / (n + 1))).toBeCloseTo(1, 9);
    expect(depth.farMm / (hyperfocalMm / (n - 1))).toBeCloseTo(1, 9);
  },
);

test("Piper's printed case: 30 ft, at 10 ft → 7.5 and 15 ft", () => {
  const { near, far } = inFeet(6, 1, 36 / (30 * 12), 10);
  expect([near, far]).toEqual([expect.closeTo(7.5, 9), expect.closeTo(15, 9)]);
});

test('half the focal length at the same stop and distance has four times the depth: 2 in become 8 in', () => {
  // Published for a 2:1 front anamorphot, 100 mm upright and 50 mm across: for the same blur the depth across is q² the upright one.
  const depthIn = (f: number, c: number) => (inFeet(f / INCH, 2.8, c / INCH, 8).far - inFeet(f / INCH, 2.8, c / INCH, 8).near) * 12;
  const uprightC = (2 * INCH * 100 ** 2) / (2 * 2.8 * (8 * FOOT) ** 2);
  expect(depthIn(100, uprightC)).toBeCloseTo(2, 2);
  expect(depthIn(50, uprightC)).toBeCloseTo(8, 1);
});

test('differs from the exact form in the third digit', () => {
  const given = { focalLengthMm: 50, fNumber: 2.8, focusDistanceMm: 1000, circleOfConfusionMm: 0.025 };
  const share = simpleDepth(given).totalMm / depthOfField({ ...given, from: 'lens' }).totalMm;
  expect(share).toBeGreaterThan(1.04);
  expect(share).toBeLessThan(1.06);
});

test('a T-number of zero in the place of an f-number is refused', () => {
  expect(simpleDepth.answer({ focalLengthMm: 50, fNumber: 0, focusDistanceMm: 1000, circleOfConfusionMm: 0.025 })).toMatchObject({ ok: false });
});
