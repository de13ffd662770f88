import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { trackingLimit } from './trackingLimit.ts';

/** Follows a target by e(t − τ)·ωc, step by step, and returns the error at the end and the largest in the last part. */
function follow(crossover: number, delayS: number, target: (time: number) => number): { last: number; late: number } {
  const step = delayS / 200;
  const errors: number[] = [];
  let at = 0;
  let late = 0;
  const steps = 200 * 60;
  for (let n = 0; n < steps; n += 1) {
    errors.push(target(n * step) - at);
    at += crossover * (errors[n - 200] ?? 0) * step;
    if (n > steps * 0.9) late = Math.max(late, Math.abs(errors[n]!));
  }
  return { last: errors.at(-1)!, late };
}

property.prop([fc.double({ min: 50, max: 800, noNaN: true }), fc.double({ min: 30, max: 70, noNaN: true })])(
  'a follower of that crossover, run step by step, trails a ramp by 1/ωc',
  (delayMs, phaseMarginDeg) => {
    const { crossoverRadPerS, rampErrorS } = trackingLimit({ delayMs, phaseMarginDeg });
    expect(follow(crossoverRadPerS, delayMs / 1000, (time) => time).last / rampErrorS).toBeCloseTo(1, 2);
  },
);

test('without margin the follower rings on; past it, it runs away; within, it settles', () => {
  const { crossoverRadPerS } = trackingLimit({ delayMs: 300, phaseMarginDeg: 0 });
  const late = (times: number) => follow(crossoverRadPerS * times, 0.3, () => 1).late;
  expect(late(0.7)).toBeLessThan(1e-3);
  expect(late(1.15)).toBeGreaterThan(3);
});

test('a margin of 90° follows nothing; a delay of nothing has no limit and is refused', () => {
  expect(trackingLimit({ delayMs: 300, phaseMarginDeg: 90 })).toEqual({ crossoverRadPerS: 0, rampErrorS: Infinity });
  expect(trackingLimit.answer({ delayMs: 0, phaseMarginDeg: 40 })).toMatchObject({ ok: false, faults: [{ path: 'delayMs' }] });
});
