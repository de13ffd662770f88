import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { travel } from './travel.ts';

test('a centre 17 mm behind the head wants the plate 17 mm forward, of 45 there are', () => {
  const answer = askOne(travel, headShoot());
  expect(answer.needs?.amount.value).toBeCloseTo(17, 3);
  expect(answer.has?.amount.value).toBe(45);
  expect(answer.verdict).toBe('good');
});

test('a plate that slides 20 mm in all is too short, and the camera has to go 7 mm forward on its wedge', () => {
  const answer = askOne(travel, headShoot((draft) => (draft.kit.parts.head.carrier.plateTravelMm = 20)));
  expect(answer).toMatchObject({ verdict: 'fails', mends: [{ says: expect.stringMatching(/7\s?mm further forward/) as string }] });
});

test('without a head it does not arise', () => expect(askAll(travel, riggedShoot())).toEqual([]));
