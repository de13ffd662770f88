import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { inTime } from './inTime.ts';

/** A rack from infinity's side: 2 m stands at 135°, 1 m at 270° on the straight scale. */
const rackIn = (seconds: number, ringTorqueNm: number) =>
  drivenShoot((draft) => {
    draft.kit.parts.focuser.focus.ringTorqueNm = { value: ringTorqueNm, plusMinus: 0 };
    Object.assign(draft.shots.portrait, { motion: 'rack', subject: [{ atS: 1, distanceMm: 2000 }, { atS: 1 + seconds, distanceMm: 1000 }] });
  });

test('a rack peaks at 1.875 times its mean (Flash & Hogan 1985): 135° in half a second are 506.25°/s', () => {
  expect(askOne(inTime, rackIn(0.5, 0.3)).needs?.amount.value).toBeCloseTo(1.875 * 270, 6);
});

test('a motor of 0.30 N·m and 300 rpm makes 200 rpm at 0.10 N·m (textbook): 400°/s at a ring of three times its teeth', () => {
  expect(askOne(inTime, rackIn(0.5, 0.3)).has?.amount.value).toBeCloseTo(400, 9);
  expect(askOne(inTime, rackIn(0.5, 0.3))).toMatchObject({ verdict: 'fails', use: expect.closeTo(506.25 / 400, 6) as number });
  expect(askOne(inTime, rackIn(0.8, 0.3)).verdict).toBe('good');
});

test('a larger gear is offered where it is quicker under this torque, and not where it would slow the ring', () => {
  const mend = (ringTorqueNm: number) => askOne(inTime, rackIn(0.3, ringTorqueNm)).mends?.map(({ says }) => says) ?? [];
  expect(mend(0.05)[0]).toContain('60-tooth');
  // Near standstill the smaller gear leaves more speed.
  expect(mend(0.8)[0]).toContain('30-tooth');
});

test('a motor that stalls, and a subject that stays, do not ask', () => {
  expect(askAll(inTime, rackIn(0.5, 1.2))).toEqual([]);
  expect(askAll(inTime, drivenShoot((draft) => (draft.shots.portrait.subject = [{ atS: 0, distanceMm: 2000 }])))).toEqual([]);
});
