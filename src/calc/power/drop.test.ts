import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { drop } from './drop.ts';

const positive = (max: number) => fc.double({ min: 0.001, max, noNaN: true });
property.prop([positive(50), positive(2), fc.double({ min: 0, max: 1, noNaN: true })])('what the source gives is what the load and the cable take',
  (sourceV, loopOhm, share) => {
  const loadW = (share * sourceV ** 2) / (4 * loopOhm);
  const { loadV, currentA, lossW } = drop({ sourceV, loadW, loopOhm });
  expect(sourceV * currentA).toBeCloseTo(loadW + lossW, 6);
  expect(sourceV - currentA * loopOhm).toBeCloseTo(loadV, 6);
  expect(loadV).toBeGreaterThanOrEqual(sourceV / 2);
});

test('the most that can be fed is V²/4R: 412.4 W (derived); beyond it there is no voltage', () => {
  const line = { sourceV: 14.4, loopOhm: 0.125689 };
  expect(drop({ ...line, loadW: 412.4 }).loadV).toBeCloseTo(7.2, 0);
  const beyond = drop.answer({ ...line, loadW: 413 });
  expect(beyond).toMatchObject({ ok: false, faults: [{ path: 'loadW' }] });
  expect(JSON.stringify(beyond)).toContain('412.4 W');
});

test('0 V and negative loads are faults; a line of no resistance drops nothing', () => {
  expect(drop.answer({ sourceV: 0, loadW: 10, loopOhm: 0.1 })).toMatchObject({ ok: false, faults: [{ path: 'sourceV' }] });
  expect(drop.answer({ sourceV: 14, loadW: -10, loopOhm: 0.1 })).toMatchObject({ ok: false, faults: [{ path: 'loadW' }] });
  expect(drop({ sourceV: 14, loadW: 70, loopOhm: 0 })).toEqual({ loadV: 14, currentA: 5, lossW: 0 });
});
