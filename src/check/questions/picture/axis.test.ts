import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { axis } from './axis.ts';

const block = (roll: object | undefined, more: (draft: Draft) => void = () => undefined) => tinyShoot((draft: Draft) => {
  const part = draft.kit.parts['block-1-5'];
  part.block = { ...part.block, squeeze: 2, roll };
  if (roll === undefined) delete part.block.roll;
  draft.needs.verticalLeanDeg = 0.999848;
  more(draft);
});

test('at 2× a turn of one degree leans verticals by 0.999848°, by the matrix of the handbook', () => {
  expect(askOne(axis, block({ heldBy: 'key' })).steps?.[0]?.amount?.value).toBeCloseTo(1, 5);
});

test.each([['key', 'good'], ['screws', 'good'], ['clamp', 'tight'], ['friction', 'tight']] as const)('held by %s without a torque: %s', (heldBy, verdict) => {
  expect(askOne(axis, block({ heldBy })).verdict).toBe(verdict);
});

test('a clamp is held against the ring that turns through it, twice over, cold on a cold day', () => {
  const cold = (draft: Draft) => {
    Object.assign(draft.kit.parts.focuser.focus, { ringTorqueNm: 0.2, coldTorqueNm: 0.4 });
    draft.days.one.temperatureC = -5;
  };
  const roll = { heldBy: 'clamp', slipTorqueNm: 0.5 };
  expect(askOne(axis, block(roll, cold))).toMatchObject({ verdict: 'fails', needs: { amount: { value: 0.8, unit: 'N·m' } } });
  expect(askOne(axis, block(roll, (draft) => (cold(draft), (draft.days.one.temperatureC = 18))))).toMatchObject({ verdict: 'good', needs: { amount: { value: 0.4 } } });
});

test('what holds it must be entered; a spherical lens is not asked', () => {
  expect(askOne(axis, block(undefined))).toMatchObject({ unknown: 'not entered' });
  expect(askAll(axis, tinyShoot((draft: Draft) => (draft.glasses.normal = { name: 'bare', stack: ['lens'], pieces: { lens: { of: 'taking-58' } } })))).toEqual([]);
});
