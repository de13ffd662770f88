import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { size } from './size.ts';

test('5 inches of 16:9 are 110.69 mm wide (derived); 35.7 × 23.8 mm at 1.5× stand 49.2 mm high on it', () => {
  const answer = askOne(size, tinyShoot());
  expect(answer.steps?.map(({ amount }) => amount?.value)).toEqual([expect.closeTo(110.69, 2) as number, expect.closeTo(110.69 / (1.5 * 1.5), 2) as number]);
});
test('from twice as far it is half as large and too small; the cure brings it back', () => {
  const far = askOne(size, tinyShoot((draft) => { draft.needs.viewers['puller-sees'].distanceMm = 1200; }));
  expect(far.verdict).toBe('fails');
  const mm = Number(/([\d.]+)\s*mm/u.exec(far.mends?.[0]?.says ?? '')?.[1]);
  expect(askOne(size, tinyShoot((draft) => { draft.needs.viewers['puller-sees'].distanceMm = mm; })).use).toBeCloseTo(1, 2);
});
test('a distance that is not entered is asked for', () => expect(askOne(size, tinyShoot((draft) => { delete draft.needs.viewers['puller-sees'].distanceMm; }))).toMatchObject({ unknown: 'not entered' }));
