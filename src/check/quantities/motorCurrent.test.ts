import { expect, test } from 'vitest';
import { drivenShoot } from '../../../test/drivenShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { motorCurrent } from './motorCurrent.ts';

/** Torque-speed line of a permanent-magnet motor, as in textbooks: current grows in proportion to torque between free run and stall. */
const draws = (ringTorqueNm: number, change: (draft: { motor: Record<string, unknown> }) => void = () => undefined) =>
  motorCurrent(new Ledger(drivenShoot((draft) => {
    draft.kit.parts.focuser.focus.ringTorqueNm = { value: ringTorqueNm, plusMinus: 0 };
    change({ motor: draft.kit.parts.motor.motor });
  })), 'sticks', 'normal', 'camera/motor');

test('a third of the torque at standstill draws a third of the way from 6 to 18 W', () => {
  // 0.3 N·m at the ring, three turns to one: 0.1 N·m of 0.3.
  expect(draws(0.3)?.movingW.value).toBeCloseTo(10, 9);
});

test('a ring that turns by itself draws what is stated; one beyond the motor no more than at standstill', () => {
  expect(draws(1e-9)?.movingW.value).toBeCloseTo(6, 6);
  expect(draws(5)?.movingW.value).toBeCloseTo(18, 9);
});

test('without the power at standstill it is what is stated; no figure, no motor: nothing', () => {
  expect(draws(0.3, ({ motor }) => delete motor['stallW'])?.movingW.value).toBe(6);
  expect(draws(0.3, ({ motor }) => delete motor['movingW'])).toBeUndefined();
  expect(motorCurrent(new Ledger(drivenShoot()), 'sticks', 'normal', 'camera/body')).toBeUndefined();
});
