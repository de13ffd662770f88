import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { range } from './range.ts';

test('270° of a 120-tooth ring are 2.25 turns of a 40-tooth gear', () => {
  expect(askOne(range, drivenShoot())).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(2.25, 12) as number } }, has: { amount: { value: 10 } } });
});

test('too few turns: a larger gear, or only the part of the throw that is shot; each with its use', () => {
  const answer = askOne(range, drivenShoot((draft) => (draft.kit.parts.motor.motor.maxTurns = 1.6)));
  expect(answer.verdict).toBe('fails');
  // 60 teeth: 1.5 turns. Shot at 2.4 to 1.5 m: 180 − 112.5 = 67.5° are 0.5625 turns.
  expect(answer.mends?.map(({ use }) => use)).toEqual([expect.closeTo(1.5 / 1.6, 9), expect.closeTo(0.5625 / 1.6, 9)]);
});

test('a motor that states no limit does not ask', () => {
  expect(askAll(range, drivenShoot((draft) => delete draft.kit.parts.motor.motor.maxTurns))).toEqual([]);
});
