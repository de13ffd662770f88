import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { weight } from './weight.ts';

const handheld = (handheldMassG?: number) =>
  tinyShoot((draft) => {
    draft.builds.camera.purpose = 'handheld';
    if (handheldMassG !== undefined) draft.needs.handheldMassG = handheldMassG;
  });

test('the sum of what is in the hands, against what was wanted, placed or not', () => {
  // By hand: body 1900, monitor 330, pack 680, lens 290, block 620, focuser 540.
  const answer = askOne(weight, handheld(4000));
  expect(answer.needs?.amount.value).toBeCloseTo(4360, 6);
  expect(answer.verdict).toBe('fails');
  expect(answer.notes?.[0]).toContain('pain'.replace('p', 'P'));
});

test('without a wish, and on a tripod, it does not arise', () => {
  expect(askAll(weight, handheld())).toEqual([]);
  expect(askAll(weight, tinyShoot())).toEqual([]);
});
