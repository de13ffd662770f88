import { expect, test } from 'vitest';
import { askOne } from '../../../../test/ask.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { wobble } from './wobble.ts';

const frequency = (change?: Parameters<typeof riggedShoot>[0]) => askOne(wobble, riggedShoot(change), 'glass=normal').has?.amount.value ?? Number.NaN;

test('a rig has a lowest swing, names what gives, and says what it is not', () => {
  const answer = askOne(wobble, riggedShoot(), 'glass=normal');
  expect(answer.has?.amount.value).toBeGreaterThan(0);
  expect(answer.notes).toContain('Estimate, not a load rating.');
  expect((answer.steps ?? []).reduce((sum, { amount }) => sum + (amount?.value ?? 0), 0)).toBeLessThanOrEqual(1.001);
});

test('more weight on the same springs swings slower: a mass four times as large, at most half the frequency lost', () => {
  // f = √(k/m)/2π (any textbook): one part of four times the mass lowers it, and never below half.
  const [light, heavy] = [frequency(), frequency((draft) => (draft.kit.parts.focuser.massG *= 4))];
  expect(heavy).toBeLessThan(light);
  expect(heavy).toBeGreaterThan(light / 2);
});

/** A kilogram 200 mm above a foot that nods at so many N·m/rad. */
const onFoot = (nodding: number) =>
  tinyShoot((draft: Draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, 0], out: [0, 1, 0], up: [0, 0, 1], stiffness: { xNPerMm: 1e6, yNPerMm: 1e6, zNPerMm: 1e6, xNmPerRad: nodding, yNmPerRad: nodding, zNmPerRad: 1e4 } };
    draft.kit.parts.weight = { name: 'Weight on a post', kind: 'other', massG: 1000, centreMm: [0, 200, 0], points: { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, 0, 0], out: [0, -1, 0], up: [0, 0, 1] } } };
    draft.builds.camera.pieces.weight = { of: 'weight' };
    draft.builds.camera.joints = { ...draft.builds.camera.joints, weight: { a: 'body/top', b: 'weight/foot' } };
  });

test('a weight on a nodding foot swings a little slower than √(k/(m·l²))/2π, for the head gives as well', () => {
  const hz = askOne(wobble, onFoot(20), 'glass=normal').has?.amount.value ?? Number.NaN;
  // √(20/(1 × 0.2²))/2π = 3.559 Hz with the camera nailed down. The head nods at 400 N·m/rad (standards/jointTypes), 0.26 m below the weight: the give at the weight grows from 0.2²/20 by 0.26²/400 m/N,
  // which alone makes 3.417 Hz; the camera’s own mass on the head takes a little more.
  expect(hz).toBeLessThan(3.417);
  expect(hz).toBeGreaterThan(3.417 * 0.97);
});

test('what a second screw would do is what it does once the joint is as stiff', () => {
  const answer = askOne(wobble, onFoot(20), 'glass=normal');
  expect(answer.mends?.[0]?.says).toContain('a second screw between Weight on a post');
  // Two screws nod at 2500 N·m/rad, one at 900 (standards/jointTypes): what was measured of one grows as much. Across and along, 1e6 N/mm do not tell.
  expect(8 / (answer.mends?.[0]?.use ?? Number.NaN)).toBeCloseTo(askOne(wobble, onFoot((20 * 2500) / 900), 'glass=normal').has?.amount.value ?? 0, 3);
});
