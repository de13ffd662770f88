import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { polariserTurn } from './polariserTurn.ts';

property.prop([fc.double({ min: -720, max: 720, noNaN: true })])('what it does not keep leaks, and half a turn is none', (turnDeg) => {
  const { keptShare, leakShare } = polariserTurn({ turnDeg });
  expect(keptShare + leakShare).toBeCloseTo(1, 12);
  expect(polariserTurn({ turnDeg: turnDeg + 180 }).keptShare).toBeCloseTo(keptShare, 9);
});

test('a turn without end is refused', () => {
  expect(polariserTurn.answer({ turnDeg: null })).toMatchObject({ ok: false, faults: [{ path: 'turnDeg' }] });
});
