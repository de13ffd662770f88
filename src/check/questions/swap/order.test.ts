import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { order } from './order.ts';

/** Four shots, the two lenses by turns. */
const byTurns = (more: Readonly<Record<string, object>> = {}) =>
  riggedShoot((draft) => {
    const day = Object.keys(draft.days)[0];
    const shot = (name: string, glass: string, at: number) => ({ name, setup: 'sticks', glass, day, order: at, tStop: 4, ...more[name] });
    draft.shots = { a: shot('a', 'normal', 1), b: shot('b', 'long', 2), c: shot('c', 'normal', 3), d: shot('d', 'long', 4) };
  });

test('one lens after the other: a third of the changes, and the edit brings it about', () => {
  const shoot = byTurns();
  const answer = askOne(order, shoot);
  // By hand: three changes as planned, one at best.
  expect((answer.needs?.amount.value ?? 0) / (answer.has?.amount.value ?? 1)).toBeCloseTo(3, 9);
  expect(answer.has?.from).toContain('exact');
  const edited = applyEdit(shoot, answer.mends?.[0]?.edit ?? { says: '', patches: [] });
  expect(edited.ok && askOne(order, edited.value.shoot).verdict).toBe('good');
});

test('what must come after stays after', () => {
  const answer = askOne(order, byTurns({ c: { after: ['b'] } }));
  // By hand: b, d before a, c costs one change as well.
  expect((answer.needs?.amount.value ?? 0) / (answer.has?.amount.value ?? 1)).toBeCloseTo(3, 9);
  const says = (answer.steps ?? []).map((step) => step.says).join();
  expect(says.indexOf('“b”')).toBeLessThan(says.indexOf('“c”'));
});
