import { describe, expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { drivenShoot } from '../../../../test/drivenShoot.ts';
import { exampleShoot } from '../../../../test/tinyShoot.ts';
import { calibrate } from './calibrate.ts';

const withFocus = (focus: object, motor: object = {}) =>
  drivenShoot((draft) => {
    Object.assign(draft.kit.parts.focuser.focus, focus);
    Object.assign(draft.kit.parts.motor.motor, motor);
  });

describe('common practice: calibration drives into the stops', () => {
  test('hard stops can be calibrated, with the least torque limit that turns the ring: 0.2 N·m wants 0.08 at the motor', () => {
    const answer = askOne(calibrate, withFocus({ endStops: 'hard' }));
    expect(answer.verdict).toBe('good');
    // 0.2 × 1.2 (assumed) over 120/40 is 0.08: of 0.05, 0.1 and 0.3 the second, which then presses with 0.3 N·m.
    expect(answer.steps?.at(-1)).toMatchObject({ says: expect.stringContaining('0.1') as string, amount: { value: expect.closeTo(0.3, 9) as number } });
  });

  test('soft stops and a split gear are minded, missing stops fail, and fingers are warned of', () => {
    expect(askOne(calibrate, withFocus({ endStops: 'soft' }))).toMatchObject({ verdict: 'tight', says: expect.stringContaining('stops are soft') as string });
    expect(askOne(calibrate, withFocus({ endStops: 'hard', gear: { module: 0.8, teeth: 120, split: true } }))).toMatchObject({ verdict: 'tight', says: expect.stringContaining('split') as string });
    expect(askOne(calibrate, withFocus({ endStops: 'none' }))).toMatchObject({ verdict: 'fails' });
    expect(askOne(calibrate, withFocus({ endStops: 'hard' })).notes?.[0]).toContain('Fingers');
  });

  test('no limit that turns the ring through: it would stop half way', () => {
    expect(askOne(calibrate, withFocus({ endStops: 'hard' }, { torqueLimitsNm: [0.02, 0.05] }))).toMatchObject({ verdict: 'fails', says: expect.stringContaining('No torque limit') as string });
  });

  test('whether stops are there must be known; a stalled motor and an unmapped wheel do not ask', () => {
    expect(askOne(calibrate, withFocus({ endStops: undefined }))).toMatchObject({ verdict: 'unknown', unknown: 'not entered' });
    expect(askAll(calibrate, withFocus({ endStops: 'hard', ringTorqueNm: 2 }))).toEqual([]);
    expect(askAll(calibrate, drivenShoot((draft) => (draft.kit.parts['hand-unit'].handWheel.mapsThrow = false)))).toEqual([]);
  });
});

test('it says when: one focuser on every taking lens is calibrated once, a set of lenses at each swap', () => {
  const demo = exampleShoot('demo');
  expect(askOne(calibrate, demo, 'setup=jetty-shoulder').steps?.[0]?.says).toContain('the same ring on every lens');
  expect(askOne(calibrate, demo, 'setup=jetty-sticks').steps?.[0]?.says).toContain('at every swap');
});
