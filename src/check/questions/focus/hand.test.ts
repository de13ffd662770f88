import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { hand } from './hand.ts';

describe('a hand unit, mapped', () => {
  test('on the straight scale 2.4 m stands at 112.5° and 1.5 m at 180°, and there sit the stops', () => {
    const answer = askOne(hand, drivenShoot());
    expect(answer.needs?.amount.value).toBeCloseTo(67.5, 9);
    expect(answer.steps?.slice(1).map(({ amount }) => amount?.value)).toEqual([expect.closeTo(112.5, 9), expect.closeTo(180, 9)]);
  });

  test('half the throw mapped over the same wheel takes twice the turn of it', () => {
    const half = askOne(hand, drivenShoot((draft) => Object.assign(draft.kit.parts.focuser.focus, { throwDeg: 135, marks: [{ distanceMm: 'infinity', angleDeg: 0 }, { distanceMm: 1000, angleDeg: 135 }] })));
    expect(half.needs?.amount.value).toBeCloseTo(67.5, 9); // half the ring's turn, twice the wheel's for each degree of it
  });
});

describe('a wheel on the rods', () => {
  const alone = (turnDeg: number, teeth: number) =>
    tinyShoot((draft) => {
      draft.kit.parts.wheel = { name: 'Wheel', kind: 'follow focus', handWheel: { turnDeg, hardStops: true, gear: { module: 0.8, teeth }, ratio: 1 } };
      draft.builds.camera.pieces.wheel = { of: 'wheel' };
      draft.kit.parts.focuser.focus.marks = [{ distanceMm: 'infinity', angleDeg: 0 }, { distanceMm: 900, angleDeg: 270 }];
    });
  // 2.4 m stands at 101.25°, 1.5 m at 162°: 60.75° of a ring of 124 teeth.

  test('turns by its gears: 31 teeth on 124 take 243° for 60.75°, more than a hand goes', () => {
    expect(askOne(hand, alone(300, 31))).toMatchObject({ verdict: 'fails', needs: { amount: { value: expect.closeTo(243, 9) as number } } });
    expect(askOne(hand, alone(300, 124))).toMatchObject({ verdict: 'good', needs: { amount: { value: expect.closeTo(60.75, 9) as number } } });
  });

  test('whose own stops come first cannot make the move', () => {
    expect(askOne(hand, alone(200, 31))).toMatchObject({ verdict: 'fails', says: expect.stringContaining('own stop') as string });
  });
});

test('a subject that stays, and a hand on the ring itself, do not ask', () => {
  expect(askAll(hand, drivenShoot((draft) => (draft.shots.portrait.subject = [{ atS: 0, distanceMm: 2000 }])))).toEqual([]);
  expect(askAll(hand, tinyShoot())).toEqual([]);
});
