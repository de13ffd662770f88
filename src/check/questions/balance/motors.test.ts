import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { gimbalShoot } from '../../../../test/gimbalShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import { motors } from './motors.ts';

const weak = (draft: Draft) => (draft.kit.parts.head.carrier.motorNm = 0.2);
const apply = (shoot: Shoot, edit: Parameters<typeof applyEdit>[1] | undefined): Shoot => {
  const after = edit === undefined ? undefined : applyEdit(shoot, edit);
  if (after === undefined || !after.ok) throw new Error('There is no edit, or it has faults.');
  return after.value.shoot;
};

test('2 kg, 4 mm above the axes and 17 mm behind: m·g·√(4² + 17²) about the tilt axis', () => {
  const answer = askOne(motors, gimbalShoot(), 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * Math.hypot(0.004, 0.017), 5);
  // Roll sees the height alone, pan the way fore and aft alone.
  expect(answer.steps?.map(({ amount }) => amount?.value)).toEqual([Math.hypot(4, 17), 4, 17].map((mm) => expect.closeTo((2 * 9.80665 * mm) / 1000, 5) as number));
  expect(answer.verdict).toBe('good');
});

test('too weak for it: balancing it for this lens alone brings the use it promises, and leaves the others', () => {
  const shoot = gimbalShoot(weak);
  const [answer, other] = ['normal', 'long'].map((glass) => askOne(motors, shoot, `glass=${glass}`));
  expect(answer).toMatchObject({ verdict: 'fails', says: expect.stringContaining('tilt axis') as string });
  const mend = answer?.mends?.[0];
  expect(mend?.use).toBeLessThan(0.05);
  const after = apply(shoot, mend?.edit);
  expect(askOne(motors, after, 'glass=normal').use).toBeCloseTo(mend?.use ?? 0, 9);
  expect(askOne(motors, after, 'glass=long').use).toBeCloseTo(other?.use ?? 0, 9);
  // And the other lens's own after that.
  const both = apply(after, askOne(motors, after, 'glass=long').mends?.[0]?.edit);
  expect(askOne(motors, both, 'glass=normal').use).toBeCloseTo(mend?.use ?? 0, 9);
});

test('pan is upright and holds nothing: 20 mm to the side and 20 ahead are 20 about tilt, 20 about roll, and 28 about an axis that has no lever', () => {
  const answer = askOne(motors, gimbalShoot((draft) => (draft.kit.parts.head.carrier.axesAtMm = [-20, 104, -37])), 'glass=normal');
  // 0.392 N·m of 0.5; about pan it would be 0.555.
  expect(answer).toMatchObject({ verdict: 'good', use: expect.closeTo((2 * 9.80665 * 0.02) / 0.5, 4) as number });
  expect(answer.steps?.[2]).toMatchObject({ says: expect.stringContaining('nothing while that axis is upright') as string, amount: { value: expect.closeTo(2 * 9.80665 * Math.hypot(0.02, 0.02), 4) as number } });
});

test('an edit promises what its own moves bring; a way without a joint is another cure, by hand', () => {
  const shoot = gimbalShoot((draft) => {
    draft.kit.parts.head.carrier.motorNm = 0.3;
    delete draft.kit.parts.head.points.plate.heightMm;
    draft.kit.parts.head.carrier.heightTravelMm = 20;
  });
  const [slid, byHand] = askOne(motors, shoot, 'glass=normal').mends ?? [];
  // Forward by the joint: the 4 mm of height are left. By hand these as well.
  expect(slid?.use).toBeCloseTo((2 * 9.80665 * 0.004) / 0.3, 4);
  expect(askOne(motors, apply(shoot, slid?.edit), 'glass=normal').use).toBeCloseTo(slid?.use ?? 0, 9);
  expect(slid?.says).not.toContain('down');
  expect(byHand).toMatchObject({ use: expect.closeTo(0, 6) as number, says: expect.stringMatching(/4\s?mm down/) as string });
  expect(byHand?.edit).toBeUndefined();
});

test('settings that are stated already are kept for the other lenses; a plate too short is used up', () => {
  const shoot = gimbalShoot((draft) => {
    weak(draft);
    draft.kit.parts.head.points.plate.slideMm = [-10, 10];
    draft.builds.camera.joints.head.settings = { slideMm: 2, heightMm: -1 };
  });
  const answer = askOne(motors, shoot, 'glass=normal');
  const mend = answer.mends?.[0];
  const use = askOne(motors, apply(shoot, mend?.edit), 'glass=normal').use;
  expect(use).toBeCloseTo(mend?.use ?? 0, 9);
  // 17 mm less all the 10 of the plate.
  expect(use).toBeCloseTo((2 * 9.80665 * 0.007) / 0.2, 3);
});

test('a gimbal turned on its own frame is balanced the same', () => {
  // Mounted back to front: its ahead is the camera's behind.
  const shoot = gimbalShoot((draft) => {
    weak(draft);
    draft.kit.parts.head.points.plate.up = [0, 0, -1];
  });
  const answer = askOne(motors, shoot, 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * Math.hypot(0.004, 0.017), 5);
  expect(answer.mends?.[0]?.says).toMatch(/17\s?mm back/);
  expect(askOne(motors, apply(shoot, answer.mends?.[0]?.edit), 'glass=normal').use).toBeCloseTo(answer.mends?.[0]?.use ?? 0, 9);
});

test('without the motors’ torque it is asked for; what hangs on the gimbal itself does not count', () => {
  expect(askOne(motors, gimbalShoot((draft) => delete draft.kit.parts.head.carrier.motorNm))).toMatchObject({ verdict: 'unknown', missing: [{ path: 'kit/parts/head/carrier/motorNm' }] });
  const laden = askOne(motors, gimbalShoot((draft) => {
    draft.kit.parts.head.points.side = { kind: 'thread', class: '1/4-20', sex: 'female', at: [200, 0, 0], out: [1, 0, 0], up: [0, 1, 0] };
    draft.kit.parts['monitor-5'].massG = 900;
    draft.kit.parts['monitor-5'].points = { foot: { kind: 'thread', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } };
    draft.builds.camera.joints.monitor = { a: 'head/side', b: 'monitor/foot' };
  }), 'glass=normal');
  expect(laden.needs?.amount.value).toBeCloseTo(2 * 9.80665 * Math.hypot(0.004, 0.017), 5);
  expect(laden.notes?.some((note) => note.includes('5-inch monitor'))).toBe(true);
});

test('on a tripod it does not arise', () => expect(askAll(motors, gimbalShoot((draft) => (draft.builds.camera.purpose = 'tripod')))).toEqual([]));

/** Outdoors in 1 m/s, a cube of 1 m round all that turns; its middle 200 mm above the centre of mass and 200 mm ahead of it. The wind pushes in the middle. */
const windy = (draft: Draft) => {
  Object.assign(draft.kit.parts.body, { centreMm: [0, 0, -37], solids: [{ shape: 'box', sizeMm: [1000, 1000, 1000], atMm: [0, 200, 163] }] });
  draft.days.one.windMps = 1;
  draft.shots.portrait.place = 'exterior';
  draft.assumptions = { 'balance.windOffCentre': 0 };
};
// By hand: ½ · 1.225 · (1 × 1.6)² · 1.05 on 1 m² is 1.646 N. Askew at t a cube shows cos t + sin t of that, of which cos t counts about an axis across:
// most at 22.5°, ½ + √½ = 1.207.
const GUST_N = 0.5 * 1.225 * 1.6 ** 2 * 1.05;
const ASKEW = 0.5 + Math.SQRT1_2;

test('a gust adds its push times the height of its middle above the axes to tilt and roll, and times its way ahead to pan', () => {
  const answer = askOne(motors, gimbalShoot(windy), 'glass=normal');
  const weight = 2 * 9.80665 * Math.hypot(0.004, 0.017);
  // The middle of the cube stands 4 + 200 mm above the axes and 200 − 17 mm ahead of them.
  const [high, ahead] = [0.204, 0.183].map((lever) => ASKEW * GUST_N * lever) as [number, number];
  expect(answer).toMatchObject({ verdict: 'fails', says: 'The motors of Gimbal do not hold the camera in the wind: a gust turns it about the tilt axis.' });
  expect(answer.needs?.amount.value).toBeCloseTo(weight + high, 4);
  expect(answer.steps?.filter(({ says }) => says.startsWith('wind besides')).map(({ amount }) => amount?.value)).toEqual([high, high, ahead].map((moment) => expect.closeTo(moment, 4) as number));
  // Weight alone is 0.3425 of 0.5 N·m; the rest is held against the square of the speed.
  expect(answer.mends?.at(-1)).toMatchObject({ use: expect.closeTo(weight / 0.5, 6) as number, says: expect.stringMatching(new RegExp(`up to ${(1.6 * Math.sqrt((0.5 - weight) / high)).toFixed(3)}`)) as string });
});

test('balanced, weight is nothing and the wind stays: 200 mm above the axes; the edit brings what it promises', () => {
  const shoot = gimbalShoot(windy);
  const mend = askOne(motors, shoot, 'glass=normal').mends?.[0];
  expect(mend?.use).toBeCloseTo((ASKEW * GUST_N * 0.2) / 0.5, 4);
  expect(askOne(motors, apply(shoot, mend?.edit), 'glass=normal').use).toBeCloseTo(mend?.use ?? 0, 9);
});

test('indoors no wind gets at it, whatever blows outside', () => {
  const answer = askOne(motors, gimbalShoot((draft) => { windy(draft); draft.shots.portrait.place = 'interior'; }), 'glass=normal');
  expect(answer.needs?.amount.value).toBeCloseTo(2 * 9.80665 * Math.hypot(0.004, 0.017), 5);
});
