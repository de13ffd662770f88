import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { wobble } from './wobble.ts';

const frequency = (change?: Parameters<typeof riggedShoot>[0]) => askOne(wobble, riggedShoot(change), 'glass=normal').has?.amount.value ?? Number.NaN;

test('a rig has a lowest swing, names what gives, and says what it is not', () => {
  const answer = askOne(wobble, riggedShoot(), 'glass=normal');
  expect(answer.has?.amount.value).toBeGreaterThan(0);
  expect(answer.notes).toContain('Estimate, not a load rating.');
  expect((answer.steps ?? []).reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0)).toBeLessThanOrEqual(1.001);
});

test('more weight on the same springs swings slower: a mass four times as large, at most half the frequency lost', () => {
  // f = √(k/m)/2π (any textbook): one part of four times the mass lowers it, and never below half.
  const [light, heavy] = [frequency(), frequency((draft) => (draft.kit.parts.focuser.massG *= 4))];
  expect(heavy).toBeLessThan(light);
  expect(heavy).toBeGreaterThan(light / 2);
});
