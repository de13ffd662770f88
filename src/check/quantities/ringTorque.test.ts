import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { drivenShoot } from '../../../test/drivenShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { focusRing } from './focusRing.ts';
import { ringTorque } from './ringTorque.ts';

const torqueAt = (atC: number, focus: object) => {
  const asking = new Asking(new Ledger(drivenShoot((draft) => Object.assign(draft.kit.parts.focuser.focus, focus))));
  return ringTorque(asking, focusRing(asking, { setup: 'sticks', glass: 'normal' }), { value: atC });
};

describe('nothing is published on ring torque in the cold; the law itself is checked', () => {
  const both = { ringTorqueNm: { value: 0.2, plusMinus: 0.02, basis: 'measured' }, coldTorqueNm: { value: 0.45, plusMinus: 0.05, basis: 'measured' }, coldAtC: 0 };

  test('half way between two measurements lies their geometric mean: √(0.2 × 0.45) = 0.3', () => {
    expect(torqueAt(10, both).value).toBeCloseTo(0.3, 12);
    expect(torqueAt(10, both)).toMatchObject({ measured: true, says: expect.stringContaining('between 0.2 warm, measured, and 0.45 at 0 °C, measured') as string });
  });

  test('at the measurements it is what was measured, and warmer than warm it is no less', () => {
    expect(torqueAt(0, both).value).toBeCloseTo(0.45, 12);
    expect(torqueAt(20, both).value).toBeCloseTo(0.2, 12);
    expect(torqueAt(35, both).value).toBe(0.2);
  });

  test('with a warm one alone twenty degrees of cold make 1.25² = 1.5625 of it, with bounds wider than those of the figure', () => {
    const { value, low, high, measured } = torqueAt(0, { ringTorqueNm: { value: 0.2, plusMinus: 0.02, basis: 'measured' } });
    expect(value).toBeCloseTo(0.3125, 12);
    expect(high / low).toBeGreaterThan(0.22 / 0.18);
    expect(measured).toBe(false);
  });

  test('a cold one without its temperature is taken as it is', () => {
    expect(torqueAt(-5, { ringTorqueNm: undefined, coldTorqueNm: 0.4 }).value).toBe(0.4);
  });

  property.prop([fc.double({ min: -30, max: 30, noNaN: true }), fc.double({ min: 0, max: 15, noNaN: true })])('it never falls as it gets colder', (atC, by) => {
    expect(torqueAt(atC - by, both).value).toBeGreaterThanOrEqual(torqueAt(atC, both).value * (1 - 1e-12));
  });
});
