import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { play } from './play.ts';
import { step } from './step.ts';

const withSteps = (steps: number | undefined) => drivenShoot((draft) => {
  if (steps === undefined) delete draft.kit.parts['hand-unit'].handWheel.steps;
  else draft.kit.parts['hand-unit'].handWheel.steps = steps;
});

test('2700 steps over 270° of ring are 0.1° each; half a one is what focus may lie beside the hand', () => {
  expect(askOne(step, withSteps(2700))).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(0.05, 12) as number, unit: 'deg' } } });
});

test('a wheel of 30 steps makes 4.5° of half a step: coarser than the depth, whose turn is that of the play', () => {
  const coarse = askOne(step, withSteps(30));
  expect(coarse.needs?.amount.value).toBeCloseTo(4.5, 12);
  expect(coarse.has?.amount.value).toBe(askOne(play, withSteps(30)).has?.amount.value);
  expect(coarse.verdict).toBe('fails');
});

test('a wheel without steps does not ask', () => {
  expect(askAll(step, withSteps(undefined))).toEqual([]);
});
