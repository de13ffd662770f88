import { fc, test as property } from '@fast-check/vitest';
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

test('a weight on a nodding foot swings at √(1/(c·m))/2π, c the give of the foot and of the screw under the camera', () => {
  // The foot nods at 20 N·m/rad 0.2 m below the weight, the camera’s screw at 900 (standards/jointTypes) 0.26 m below it: 0.2²/20 + 0.26²/900 m/N. The camera’s own mass takes next to nothing.
  const giveMPerN = 0.2 ** 2 / 20 + 0.26 ** 2 / 900;
  const hz = askOne(wobble, onFoot(20), 'glass=normal').has?.amount.value ?? Number.NaN;
  expect(hz / (Math.sqrt(1 / giveMPerN) / (2 * Math.PI))).toBeCloseTo(1, 2);
});

property.prop([fc.constantFrom('body', 'focuser', 'motor', 'taking-58'), fc.double({ min: 1, max: 20, noNaN: true })])('more mass anywhere never swings faster (Rayleigh)', (part, times) => {
  const heavier = frequency((draft) => {
    draft.kit.parts[part].massG *= times;
  });
  expect(heavier).toBeLessThanOrEqual(frequency() * (1 + 1e-6));
});

property.prop([fc.double({ min: 1 / 3, max: 3, noNaN: true })])('all joints stiffer by a share swing faster by no more than its root, and never slower (Rayleigh)', (times) => {
  const [before, after] = [frequency(), frequency((draft) => (draft.assumptions = { ...draft.assumptions, 'hold.stiffness': times }))];
  const [least, most] = [Math.min(1, Math.sqrt(times)), Math.max(1, Math.sqrt(times))];
  expect(after / before).toBeGreaterThanOrEqual(least - 1e-6);
  expect(after / before).toBeLessThanOrEqual(most + 1e-6);
});

test('what a second screw would do is what it does once the joint is as stiff', () => {
  const answer = askOne(wobble, onFoot(20), 'glass=normal');
  expect(answer.mends?.[0]?.says).toContain('a second screw between Weight on a post');
  // Two screws nod at 2500 N·m/rad, one at 900 (standards/jointTypes): what was measured of one grows as much. Across and along, 1e6 N/mm do not tell.
  expect(8 / (answer.mends?.[0]?.use ?? Number.NaN)).toBeCloseTo(askOne(wobble, onFoot((20 * 2500) / 900), 'glass=normal').has?.amount.value ?? 0, 3);
});
