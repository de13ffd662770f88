import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { tinyShoot } from '../../../../test/tinyShoot.ts';
import { change } from './change.ts';
import { motorPlace } from './motorPlace.ts';

test('only the taking lens goes; block and focuser stay in the hand; the motor follows by the difference of the lenses', () => {
  const answer = askOne(change, riggedShoot());
  const says = (answer.steps ?? []).map((step) => step.says);
  expect(says.filter((one) => one.startsWith('take off'))).toHaveLength(1);
  expect(says.filter((one) => one.startsWith('put on'))).toHaveLength(1);
  expect(says.some((one) => /Variable diopter|72 mm/.test(one) && one.startsWith('open'))).toBe(false);
  // By hand: the lenses are 62 and 88 mm long.
  expect(says.find((one) => one.startsWith('slide Motor'))).toMatch(/^slide Motor on a clamp 26\s?mm forward on “15 mm rod, 300 mm”/);
});

test('the time is the sum of what the model states for each thing', () => {
  const answer = askOne(change, riggedShoot());
  // By hand: 2 joints opened and 2 closed at 0.2, one piece off and one on at 0.8, one clamp moved 0.4, axis 1.5, motor 0.7.
  expect(answer.needs?.amount.value).toBeCloseTo(4 * 0.2 + 2 * 0.8 + 0.4 + 1.5 + 0.7, 9);
});

test('a time of one’s own takes the place of the default, in the sum and in what it may be out by', () => {
  const own = (value: number) => ({ value, low: value, high: value, basis: 'measured' as const });
  const answer = askOne(change, riggedShoot((draft) => {
    draft.assumptions = { 'swap.offMin': own(1), 'swap.handMin': own(0.5), 'swap.settingMin': own(1), 'swap.rollMin': own(2), 'swap.calibrateMin': { value: 1, low: 0.5, high: 3 }, 'swap.allowedMin': { value: 6, low: 5, high: 9 } };
  }));
  // 4 joints at 0.5, 2 pieces at 1, one clamp 1, axis 2, motor 1: only the motor is in doubt.
  expect(answer.needs).toMatchObject({ amount: { value: expect.closeTo(8, 9) as number }, from: expect.stringContaining('steps, one a move (estimate, 7.5 to 10)') as string });
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
