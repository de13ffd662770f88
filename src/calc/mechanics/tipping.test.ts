import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { standTipping } from './standTipping.ts';
import { tipping } from './tipping.ts';

const square: [number, number][] = [[-300, -200], [300, -200], [300, 200], [-300, 200]];
const given = { supportMm: square, massG: 10_000, centreMm: [0, 900, 0] as [number, number, number], atHeightMm: 1000 };

test('over the middle of a rectangle the near edge decides; outside, the distance back to it is negative', () => {
  expect(tipping(given)).toEqual({ marginMm: 200, tipsAtN: expect.closeTo(19.6133, 9) });
  expect(tipping({ ...given, centreMm: [0, 900, 250] }).marginMm).toBe(-50);
  // Off a corner by 30 and 40 mm.
  expect(tipping({ ...given, centreMm: [330, 900, 240] })).toMatchObject({ marginMm: -50 });
  expect(tipping({ ...given, centreMm: [330, 900, 240] }).tipsAtN).toBeLessThan(0);
});

const coordinate = fc.integer({ min: -500, max: 500 });

const anyOrder = fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 });
const inside = fc.tuple(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -200, max: 200 }));

property.prop([anyOrder, fc.array(inside, { maxLength: 6 }), coordinate, coordinate])(
  'order, repeats and feet within the others change nothing',
  (order, within, x, z) => {
    const centreMm: [number, number, number] = [x, 900, z];
    const supportMm = [...within, ...order.map((k) => square[k]!), square[0]!];
    const [plain, mixed] = [tipping({ ...given, centreMm }), tipping({ ...given, centreMm, supportMm })];
    expect(mixed.marginMm).toBeCloseTo(plain.marginMm, 9);
    expect(mixed.tipsAtN).toBeCloseTo(plain.tipsAtN, 9);
  },
);

const lines = [[[0, 0]], [[0, 0], [100, 0]], [[0, 0], [100, 100], [200, 200]], [[5, 5], [5, 5], [5, 5]]];

test.each(lines.map((line) => [line]))('feet in one line hold nothing up: %j', (supportMm) => {
  expect(tipping.answer({ ...given, supportMm })).toMatchObject({ ok: false, faults: [{ path: 'supportMm' }] });
});

const radius = fc.double({ min: 200, max: 900, noNaN: true });

property.prop([fc.integer({ min: 3, max: 8 }), radius])('feet on a circle agree with feet given one by one', (feet, footRadiusMm) => {
  const angle = (k: number) => (2 * Math.PI * k) / feet;
  const supportMm = Array.from({ length: feet }, (_, k): [number, number] => [footRadiusMm * Math.sin(angle(k)), footRadiusMm * Math.cos(angle(k))]);
  const round = standTipping({ footRadiusMm, feet, massG: 12_000, centreHeightMm: 1100, aheadMm: 0, ballastG: 0, atHeightMm: 1500 });
  const single = tipping({ supportMm, massG: 12_000, centreMm: [0, 1100, 0], atHeightMm: 1500 });
  expect(single.marginMm).toBeCloseTo(round.marginMm, 8);
  expect(single.tipsAtN).toBeCloseTo(round.tipsAtN, 8);
});

test('a sandbag as heavy as the stand doubles the push it takes, and lowers its centre by half', () => {
  const stand = { footRadiusMm: 500, feet: 3, massG: 15_000, centreHeightMm: 1500, aheadMm: 0, ballastG: 0, atHeightMm: 1500 };
  const bagged = standTipping({ ...stand, ballastG: 15_000 });
  expect(bagged.tipsAtN).toBeCloseTo(2 * standTipping(stand).tipsAtN, 9);
  expect(Math.tan((bagged.tiltDeg * Math.PI) / 180)).toBeCloseTo(250 / 750, 9);
  expect(standTipping({ ...stand, aheadMm: 260 }).marginMm).toBeCloseTo(-10, 9);
});
