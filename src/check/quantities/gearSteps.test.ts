import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import type { Draft } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { Asking } from '../Asking.ts';
import { doneWords } from './changeWords.ts';
import { lensChange } from './lensChange.ts';

const changed = (change: (draft: Draft) => void, from = 'normal', to = 'long') => {
  const { steps, finishes } = lensChange(new Asking(new Ledger(riggedShoot(change))), { setup: 'sticks', glass: from }, { setup: 'sticks', glass: to });
  return { says: steps.map((step) => doneWords(step).replaceAll(/\s/g, ' ')), finishes };
};
const slideUpTo = (high: number) => (draft: Draft) => (draft.builds.camera.joints['motor-on-rod'].settings.slideMm = { auto: 'perLens', low: 0, high });

// By hand: with the short lens the middles of the gears meet at 132 mm, with the other, 26 mm longer, at 158 mm. Faces of 10 and 14 mm touch up to 12 mm apart.
test('a drive that ends before its gear is said to be short by what is missing, and is not calibrated', () => {
  const { says, finishes } = changed(slideUpTo(138));
  expect(finishes).toBe(false);
  expect(says.filter((one) => /mesh|reach|calibrate/.test(one))).toEqual(['Motor on a clamp does not reach the gear of Variable diopter: short by 20 mm (see space.gearReach)']);
  expect(says.find((one) => one.startsWith('slide Motor'))).toMatch(/6 mm forward on .*, the end of its way$/);
});

test('what was never in mesh is not swung clear; back on the other lens it meshes again', () => {
  const { says, finishes } = changed(slideUpTo(138), 'long', 'normal');
  expect(finishes).toBe(true);
  expect(says.filter((one) => /swing|mesh|calibrate/.test(one))).toEqual(['bring Motor on a clamp into mesh with Variable diopter', 'calibrate Motor on a clamp, fingers clear']);
});

test('a drive that reaches with part of its face still drives', () => {
  // 10 mm off the middle: 2 mm of the faces are left, which space.gearFace judges.
  expect(changed(slideUpTo(148))).toMatchObject({ finishes: true, says: expect.arrayContaining(['calibrate Motor on a clamp, fingers clear']) as string[] });
});

test('a ring without a gear cannot be driven', () => {
  const { says, finishes } = changed((draft) => delete draft.kit.parts.focuser.focus.gear);
  expect(finishes).toBe(false);
  expect(says).toContain('Variable diopter has no gear (see space.gearReach)');
  expect(says.some((one) => one.startsWith('calibrate'))).toBe(false);
});

test('without a joint between gears the motor of the camera is taken to turn the ring', () => {
  const { says, finishes } = changed((draft) => delete draft.builds.camera.joints.mesh);
  expect(finishes).toBe(true);
  expect(says.filter((one) => /swing|mesh|calibrate/.test(one))).toHaveLength(3);
});
