import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { motorPlace } from './motorPlace.ts';

// Faces of 10 and 14 mm, 5 mm to stay in mesh: 7 mm either side of the place. Half the second lens’s extra length decides.
test('gears 26 mm apart share no place: the motor has to move', () => {
  expect(askOne(motorPlace, riggedShoot())).toMatchObject({ verdict: 'tight', says: expect.stringContaining('has to move for') as string });
});

test('gears 8 mm apart share one', () => {
  const near = riggedShoot((draft) => {
    draft.kit.parts['taking-90'].lengthMm = 70;
    draft.kit.parts['taking-90'].points.front.at = [0, 0, 70];
  });
  const answer = askOne(motorPlace, near);
  expect(answer.verdict).toBe('good');
  // 133 to 139 mm from the back of a rod of 300 mm.
  expect(answer.steps?.[0]?.says).toContain('behind the front end of');
  expect(answer.steps?.[0]?.amount?.value).toBeGreaterThanOrEqual(161);
  expect(answer.steps?.[0]?.amount?.value).toBeLessThanOrEqual(167);
});
