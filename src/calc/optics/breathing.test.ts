import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { breathing } from './breathing.ts';
import { thinLensBreathing } from './thinLensBreathing.ts';

const distance = fc.oneof(fc.double({ min: 250, max: 1e5, noNaN: true }), fc.constant(Infinity));

property.prop([distance, distance])('a rack and the rack back cancel, measured or reckoned', (fromDistanceMm, toDistanceMm) => {
  const marks = [{ distanceMm: Infinity, fieldShare: 1 }, { distanceMm: 1000, fieldShare: 0.94 }, { distanceMm: 250, fieldShare: 0.8 }];
  const there = { fromDistanceMm, toDistanceMm };
  const back = { fromDistanceMm: toDistanceMm, toDistanceMm: fromDistanceMm };
  for (const [go, come] of [
    [breathing({ marks, ...there }), breathing({ marks, ...back })],
    [thinLensBreathing({ focalLengthMm: 50, ...there }), thinLensBreathing({ focalLengthMm: 50, ...back })],
  ] as const) {
    expect((1 + go.change) * (1 + come.change)).toBeCloseTo(1, 9);
  }
});

const share = (toDistanceMm: number) => thinLensBreathing({ focalLengthMm: 75, fromDistanceMm: Infinity, toDistanceMm }).toShare;

test('four marks of a thin lens are met by its measured form to a thousandth', () => {
  const marks = [Infinity, 3000, 1500, 900].map((distanceMm) => ({ distanceMm, fieldShare: share(distanceMm) }));
  const { toShare } = breathing({ marks, fromDistanceMm: Infinity, toDistanceMm: 1100 });
  expect(Math.abs(toShare - share(1100))).toBeLessThan(1e-3);
});

test('an end of the rack outside the marks is refused by name', () => {
  const marks = [{ distanceMm: null, fieldShare: 1 }, { distanceMm: 1000, fieldShare: 0.94 }];
  expect(breathing.answer({ marks, fromDistanceMm: 2000, toDistanceMm: 500 })).toMatchObject({ ok: false, faults: [{ path: 'toDistanceMm' }] });
  expect(thinLensBreathing.answer({ focalLengthMm: 50, fromDistanceMm: 100, toDistanceMm: 500 })).toMatchObject({
    ok: false, faults: [{ path: 'fromDistanceMm', message: expect.stringContaining('200 mm') }],
  });
});
