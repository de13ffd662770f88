import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { headShoot } from '../../../../test/headShoot.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, exampleShoot } from '../../../../test/tinyShoot.ts';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import { stands } from './stands.ts';

const ofCamera = (shoot: Shoot) => askOne(stands, shoot, 'build=camera');
const mended = (shoot: Shoot): Shoot => {
  const after = applyEdit(shoot, ofCamera(shoot).mends![0]!.edit!);
  if (!after.ok) throw new Error(`The edit has faults: ${JSON.stringify(after.faults)}`);
  return after.value.shoot;
};

// What builds of each purpose stand on: common practice.
test.each([['tripod', 'head, legs or stand'], ['shoulder', 'shoulder pad'], ['gimbal', 'gimbal'], ['vehicle', 'mount, gimbal or head']])('a build for a %s with nothing that holds it stands on nothing, and it is asked for', (purpose, wanted) => {
  const answer = ofCamera(riggedShoot((draft) => (draft.builds.camera.purpose = purpose)));
  expect(answer).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ path: 'builds/camera/pieces' }] });
  expect(answer.says).toBe(`Camera on sticks stands on nothing: no ${wanted} is among its pieces.`);
});

test('held free in the hands, or in a way of its own, it needs nothing', () => {
  for (const purpose of ['handheld', 'other']) expect(askAll(stands, riggedShoot((draft) => (draft.builds.camera.purpose = purpose)))).toEqual([]);
});

test('legs that do not say that they carry are asked to', () => {
  const answer = ofCamera(riggedShoot((draft) => {
    draft.kit.parts.legs = { name: 'Old legs', kind: 'legs', massG: 4000 };
    draft.builds.camera.pieces.legs = { of: 'legs' };
  }));
  expect(answer).toMatchObject({ verdict: 'unknown', says: 'Camera on sticks stands on nothing that says it carries: Old legs has no "carrier" entered.', missing: [{ path: 'kit/parts/legs/carrier' }] });
});

test('a station on its stand, and one held by its handle, are plain; one with neither is asked about', () => {
  const station = (part?: object) => askOne(stands, riggedShoot((draft: Draft) => {
    draft.builds.village = { name: 'Village', purpose: 'viewing station', station: true, pieces: { screen: { of: 'monitor-5' } } };
    draft.setups.sticks.stations = ['village'];
    if (part === undefined) return;
    draft.kit.parts.under = part;
    draft.builds.village.pieces.under = { of: 'under' };
  }), 'build=village');
  expect(station({ name: 'Stand', kind: 'stand', carrier: { kind: 'stand' } })).toMatchObject({ verdict: 'good', says: 'Stand carries it, as a build for a viewing station asks.' });
  expect(() => station({ name: 'Grip', kind: 'handle' })).toThrow('did not arise');
  expect(station()).toMatchObject({ verdict: 'unknown', says: 'Village stands on nothing: no stand, legs, head, mount or handles is among its pieces.' });
});

test('twin heads are told apart by their number, and taking the one off that nothing hangs on mends it', () => {
  const twins = headShoot((draft) => (draft.builds.camera.pieces.again = { of: 'head' }));
  const answer = ofCamera(twins);
  expect(answer).toMatchObject({ verdict: 'tight', says: 'Two of Head cannot both carry it at once.', mends: [{ says: 'Take one Head off', use: 0 }] });
  const after = mended(twins);
  expect(Object.keys(after.builds['camera']?.pieces ?? {})).toContain('head');
  expect(ofCamera(after)).toMatchObject({ verdict: 'good', says: 'Head carries it, as a build for a tripod asks.' });
});

test('legs under a build for the shoulder are taken off with the joints that end on them', () => {
  const shoot = exampleShoot('demo', (draft) => {
    draft.builds.shoulder.pieces.legs = { of: draft.builds.tripod.pieces.legs.of };
    draft.builds.shoulder.pieces.head = { of: draft.builds.tripod.pieces.head.of };
    draft.builds.shoulder.joints['head-on-legs'] = { ...draft.builds.tripod.joints[Object.keys(draft.builds.tripod.joints).find((id) => Object.values<string>(draft.builds.tripod.joints[id]).some((end) => String(end).startsWith('legs/'))) ?? ''] };
  });
  const answer = askOne(stands, shoot, 'build=shoulder');
  expect(answer).toMatchObject({ verdict: 'tight', says: expect.stringMatching(/legs.*do not go with a build for the shoulder\.$/) as string, mends: [{ use: 0 }] });
  const after = applyEdit(shoot, answer.mends![0]!.edit!);
  if (!after.ok) throw new Error(`The edit has faults: ${JSON.stringify(after.faults)}`);
  expect(askOne(stands, after.value.shoot, 'build=shoulder').verdict).toBe('good');
});

test('two troubles at once: each mend leaves the other', () => {
  const shoot = headShoot((draft) => {
    draft.kit.parts.pad = { name: 'Spare pad', kind: 'shoulder pad', carrier: { kind: 'shoulder pad' } };
    Object.assign(draft.builds.camera.pieces, { again: { of: 'head' }, pad: { of: 'pad' } });
  });
  expect(ofCamera(shoot).mends?.map(({ use }) => use)).toEqual([1, 1]);
  expect(ofCamera(mended(shoot))).toMatchObject({ verdict: 'tight', says: 'Spare pad does not go with a build for a tripod.', mends: [{ use: 0 }] });
});
