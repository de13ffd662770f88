import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { exampleShoot, tinyShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { turns } from './turns.ts';

const withTorque = (ringTorqueNm: object | number, more: (draft: { kit: { parts: Record<string, never> }; days: { one: Record<string, unknown> } }) => void = () => undefined) =>
  drivenShoot((draft) => {
    draft.kit.parts.focuser.focus.ringTorqueNm = ringTorqueNm;
    more(draft);
  });

describe('torque of the ring against the motor, by the ratio of the gears (ISO 21771)', () => {
  test('0.4 N·m × 1.5 against 0.3 N·m × 120/40 = 0.9 N·m', () => {
    const answer = askOne(turns, withTorque(0.4));
    expect(answer.needs?.amount.value).toBeCloseTo(0.6, 12);
    expect(answer.has?.amount.value).toBeCloseTo(0.9, 12);
    expect(answer).toMatchObject({ verdict: 'good', use: expect.closeTo(2 / 3, 9) as number });
  });

  test('the margin gone is a motor that may stick; the torque gone is one that stalls', () => {
    expect(askOne(turns, withTorque(0.7))).toMatchObject({ verdict: 'fails', says: expect.stringContaining('may stick') as string });
    expect(askOne(turns, withTorque(0.95))).toMatchObject({ verdict: 'fails', says: expect.stringContaining('stalls') as string });
  });

  test('the coldest day of the glass counts', () => {
    const cold = askOne(turns, withTorque(0.4, (draft) => (draft.days.one['temperatureC'] = 0)));
    expect(cold.needs?.amount.value).toBeCloseTo(0.4 * 1.25 ** 2 * 1.5, 9); // 1.25 for ten degrees: the assumption
    expect(cold.notes?.join(' ')).toContain('freezer');
  });
});

test('a motor gear with too few teeth is told: full-depth teeth of 20° want 17 or 18 beside a gear of 120 (Shigley, from memory)', () => {
  const small = askOne(turns, drivenShoot((draft) => (draft.builds.camera.pieces.motor.gearTeeth = 12)));
  expect(small.notes?.join(' ')).toMatch(/12 teeth is fouled .* below 1[78]\./);
});

test('each mend, tried, gives the use it promises', () => {
  const shoot = exampleShoot('demo');
  const failing = askAll(turns, shoot).find(({ verdict }) => verdict === 'fails');
  const mends = failing?.mends?.filter(({ edit }) => edit !== undefined) ?? [];
  expect(mends.length).toBeGreaterThan(1);
  for (const { edit, use } of mends) {
    const edited = applyEdit(shoot, edit as NonNullable<typeof edit>);
    if (!edited.ok) throw new Error(JSON.stringify(edited.faults));
    expect(askOne(turns, edited.value.shoot, failing?.key).use).toBeCloseTo(use ?? Number.NaN, 9);
  }
});

test('a ring turned by hand does not ask; without a torque it names it and the luggage scale', () => {
  expect(askAll(turns, tinyShoot())).toEqual([]);
  const unknown = askOne(turns, drivenShoot((draft) => delete draft.kit.parts.focuser.focus.ringTorqueNm));
  expect(unknown).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ measure: expect.stringContaining('luggage scale') as string }] });
  const noGear = askOne(turns, drivenShoot((draft) => delete draft.kit.parts.focuser.focus.gear));
  expect(noGear.says).toContain('teeth of the focus gear');
});
