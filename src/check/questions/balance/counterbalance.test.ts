import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { counterbalance } from './counterbalance.ts';

test('2 kg, 104 mm above the plate and 60 mm more to the tilt axis: m·g·h = 3.217 N·m', () => {
  const answer = askOne(counterbalance, headShoot(), 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * 0.164, 4);
  expect(answer.verdict).toBe('good');
  expect(answer.notes).toContain('Estimate, not a load rating.');
});

test('a weaker spring lets it fall, and says how low the centre would have to be', () => {
  // 3 N·m hold 2 kg up to 152.96 mm above the axis: 93 mm above the plate.
  const answer = askOne(counterbalance, headShoot((draft) => (draft.kit.parts.head.carrier.counterbalanceNm = 3)), 'glass=normal');
  expect(answer).toMatchObject({ verdict: 'fails', mends: [{ says: expect.stringContaining('93') as string }] });
});

test('a head without a counterbalance is not asked about', () => expect(askAll(counterbalance, headShoot((draft) => delete draft.kit.parts.head.carrier.counterbalanceNm))).toEqual([]));
