import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { change } from './change.ts';
import { motorPlace } from './motorPlace.ts';

test('only the taking lens goes; block and focuser are set aside in one and put back; the motor follows by the difference of the lenses', () => {
  const answer = askOne(change, riggedShoot());
  const says = (answer.steps ?? []).map((step) => step.says);
  expect(says.filter((one) => one.startsWith('take off'))).toHaveLength(1);
  expect(says.filter((one) => one.startsWith('put on'))).toHaveLength(1);
  // Common practice: the drive clear, the front off before the lens, the lens at infinity before the front goes back on, mesh and calibration last.
  const order = ['swing', 'open 1.5', 'set 1.5', 'open', 'take off', 'put on', 'fix', 'put 1.5', 'fix 1.5', 'set 90 mm taking lens truly to infinity', 'slide Motor', 'set the squeeze axis', 'bring', 'calibrate'];
  expect(says.filter((_, at) => at < order.length).map((one, at) => [one, one.startsWith(order[at] ?? '')])).toEqual(says.slice(0, order.length).map((one) => [one, true]));
  // By hand: the lenses are 62 and 88 mm long.
  expect(says.find((one) => one.startsWith('slide Motor'))).toMatch(/^slide Motor on a clamp 26\s?mm forward on “15 mm rod, 300 mm”/);
});

test('the time is the sum of what the model states for each thing', () => {
  const answer = askOne(change, riggedShoot());
  // By hand: 2 joints opened and 2 closed, the gears apart and together, the lens at infinity at 0.2; lens off and on, front aside and back at 0.8; one clamp and the plate of the head moved 0.4;
  // axis 1.5, motor 0.7.
  expect(answer.needs?.amount.value).toBeCloseTo(7 * 0.2 + 4 * 0.8 + 2 * 0.4 + 1.5 + 0.7, 9);
});

test('a time of one’s own takes the place of the default, in the sum and in what it may be out by', () => {
  const own = (value: number) => ({ value, low: value, high: value, basis: 'measured' as const });
  const answer = askOne(change, riggedShoot((draft) => {
    draft.assumptions = { 'swap.offMin': own(1), 'swap.handMin': own(0.5), 'swap.settingMin': own(1), 'swap.rollMin': own(2), 'swap.calibrateMin': { value: 1, low: 0.5, high: 3 }, 'swap.allowedMin': { value: 6, low: 5, high: 9 } };
  }));
  // 4 joints, 2 of gears and the lens at 0.5, 4 pieces at 1, clamp and plate 1 each, axis 2, motor 1: only the motor is in doubt.
  expect(answer.needs).toMatchObject({ amount: { value: expect.closeTo(12.5, 9) as number }, from: expect.stringContaining('(estimate, 12 to 15)') as string });
  expect(answer.has?.from).toContain('(estimate, 5 to 9)');
});

test('one lens is no set; without places the glass still changes', () => {
  expect(askAll(change, tinyShoot())).toEqual([]);
  const loose = riggedShoot((draft) => (draft.builds.camera.joints = {}));
  expect(askOne(change, loose).steps?.some(({ says }) => says.startsWith('take off'))).toBe(true);
});

test('one place cannot serve lenses 26 mm apart; a set of equal lengths it can', () => {
  expect(askOne(motorPlace, riggedShoot()).verdict).toBe('tight');
  const matched = riggedShoot((draft) => {
    draft.kit.parts['taking-90'].lengthMm = 62;
    draft.kit.parts['taking-90'].points.front.at = [0, 0, 62];
  });
  expect(askOne(motorPlace, matched).verdict).toBe('good');
});

test('a change whose motor does not reach is no good change, and is named', () => {
  // By hand: the gears of the longer lens meet at 158 mm along the rod.
  const answer = askOne(change, riggedShoot((draft) => (draft.builds.camera.joints['motor-on-rod'].settings.slideMm = { auto: 'perLens', low: 0, high: 138 })));
  expect(answer).toMatchObject({ verdict: 'tight', says: expect.stringContaining('58 mm behind the block → 90 mm behind the block') as string });
  expect(answer.notes?.[0]).toContain('space.gearReach');
});
