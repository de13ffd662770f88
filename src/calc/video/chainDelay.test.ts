import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { chainDelay } from './chainDelay.ts';

const stages = fc.array(fc.record({ name: fc.string({ maxLength: 20 }), ms: fc.double({ min: 0, max: 500, noNaN: true }),
  frames: fc.integer({ min: 0, max: 8 }) }), { maxLength: 12 });

property.prop([stages, stages, fc.constantFrom(23.976, 25, 50, 59.94)])('a chain is the sum of its parts', (first, second, frameRateHz) => {
  const delay = (list: typeof first) => chainDelay({ frameRateHz, stages: list }).delayMs;
  expect(delay([...first, ...second])).toBeCloseTo(delay(first) + delay(second), 6);
});

test('a camera without a stage is at once, and a stage without a figure is a fault, not a zero', () => {
  expect(chainDelay({ frameRateHz: 24, stages: [] })).toEqual({ delayMs: 0, delayFrames: 0 });
  expect(chainDelay.answer({ frameRateHz: 24, stages: [{ name: 'radio' }] })).toMatchObject({ ok: false, faults: [{ path: 'stages/0' }] });
  expect(chainDelay.answer({ frameRateHz: 24, stages: [{ name: 'radio', ms: -4 }] })).toMatchObject({ ok: false, faults: [{ path: 'stages/0/ms' }] });
});

test('the same two frames last longer at 24 than at 60', () => {
  const two = [{ name: 'camera', frames: 2 }];
  expect(chainDelay({ frameRateHz: 24, stages: two }).delayMs).toBeCloseTo(83.33, 2);
  expect(chainDelay({ frameRateHz: 60, stages: two }).delayMs).toBeCloseTo(33.33, 2);
});
