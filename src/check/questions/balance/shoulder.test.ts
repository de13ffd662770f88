import { expect, test } from 'vitest';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { shoulder } from './shoulder.ts';

/** The rigged shoot on a pad whose shoulder point lies `padZ` ahead of the plate's middle; the plate is the root, and the body stands on it. */
const onPad = (backMm: number, change: (draft: Draft) => void = () => undefined) =>
  riggedShoot((draft) => {
    draft.builds.camera.purpose = 'shoulder';
    draft.kit.parts.plate.points.bottom = { kind: 'wedge', class: 'long wedge', sex: 'male', at: [0, -45, 0], out: [0, -1, 0], up: [0, 0, 1] };
    draft.kit.parts.pad = {
      name: 'Pad', kind: 'shoulder pad', massG: 400, centreMm: [0, -30, 0], carrier: { kind: 'shoulder pad' },
      points: { top: { kind: 'wedge', class: 'long wedge', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] }, shoulder: { kind: 'hand', at: [0, -50, -backMm], out: [0, -1, 0] } },
    };
    draft.builds.camera.pieces.pad = { of: 'pad' };
    draft.builds.camera.joints['on-pad'] = { a: 'plate/bottom', b: 'pad/top' };
    change(draft);
  });

/** The monitor and the pack, which have no place in this shoot, weigh next to nothing. */
const nothingLoose = (draft: Draft) => {
  for (const part of ['monitor-5', 'pack-98']) draft.kit.parts[part].massG = 1;
};

test('while a sixth of the weight has no place it may fail, but does not pass; a gram does not matter', () => {
  expect(askOne(shoulder, onPad(20), 'glass=normal')).toMatchObject({ verdict: 'unknown', unknown: 'could not judge', says: expect.stringMatching(/^1\.01\skg of 5\.91\skg have no place/) as string });
  expect(askOne(shoulder, onPad(300), 'glass=normal').verdict).toBe('fails');
  expect(['good', 'tight']).toContain(askOne(shoulder, onPad(20, nothingLoose), 'glass=normal').verdict);
});

test('the hands hold weight times lever over the distance to the grips', () => {
  const [near, far] = [onPad(20), onPad(120)].map((shoot) => askOne(shoulder, shoot, 'glass=normal'));
  // Statics by hand: the pad 100 mm further back adds 100 mm to the lever of the same mass; hands are 300 mm ahead of the pad (assumed). Placed: body 1900, lens 290,
  // block 620, focuser 540, plate 700, rods 190, motor 260, pad 400; the monitor and the pack have no place in this shoot.
  const newtons = (answer: typeof near) => answer?.needs?.amount.value ?? Number.NaN;
  expect(newtons(far) - newtons(near)).toBeCloseTo(((1900 + 290 + 620 + 540 + 700 + 190 + 260 + 400) / 1000) * 9.80665 * (100 / 300), 6);
  expect(far?.says).toContain('forward');
  expect(far?.notes?.some((note) => note.includes('1010'))).toBe(true);
});

test('a little more than hands hold at their ease leans; twice as much falls', () => {
  const force = askOne(shoulder, onPad(120), 'glass=normal').needs?.amount.value ?? Number.NaN;
  const says = (use: number) => askOne(shoulder, onPad(120, (draft) => (draft.assumptions = { 'balance.restForceN': force / use })), 'glass=normal').says;
  expect(says(1.02)).toBe('The rig leans forward: the hands must hold up more than they can all day.');
  expect(says(2.1)).toMatch(/^The rig falls forward off the shoulder/);
});

test('on a tripod it does not arise; without a pad it waits for one, and with one that has no place it says so', () => {
  expect(askAll(shoulder, riggedShoot())).toEqual([]);
  expect(askOne(shoulder, riggedShoot((draft) => (draft.builds.camera.purpose = 'shoulder')))).toMatchObject({ verdict: 'unknown', unknown: 'not entered', missing: [{ path: 'builds/camera/pieces' }] });
  expect(askOne(shoulder, onPad(20, (draft) => delete draft.builds.camera.joints['on-pad']))).toMatchObject({ verdict: 'unknown', unknown: 'could not judge', says: expect.stringMatching(/^Pad is not joined to the rig yet/) as string });
});

test('what hands hold for an hour is 7.9 % of their strength (Björkstén and Jonsson 1977)', () => {
  expect(askOne(shoulder, onPad(20), 'glass=normal').has?.amount.value).toBeCloseTo(0.079 * 300, 0);
});

test('sliding the pad brings the use it promises, whichever piece the slide is counted on', () => {
  for (const at of ['plate/bottom', 'pad/top'] as const) {
    const shoot = onPad(120, (draft) => {
      nothingLoose(draft);
      const [part, point] = at.split('/') as [string, string];
      draft.kit.parts[part].points[point].slideMm = [-90, 90];
    });
    const mend = askOne(shoulder, shoot, 'glass=normal').mends?.find(({ edit }) => edit !== undefined);
    expect(mend?.says).toMatch(/Slide the pad .* forward/);
    const after = applyEdit(shoot, mend!.edit!);
    if (!after.ok) throw new Error('The edit has faults.');
    expect(askOne(shoulder, after.value.shoot, 'glass=normal').use).toBeCloseTo(mend!.use!, 9);
  }
});

test('a gust from the worst side: up or down by its height above the shoulder, sideways by its way ahead of it, both over the way to the hands', () => {
  // A cube of 1 m round the rig, its middle 250 mm ahead of the middle of the body and 200 mm above; 2 m/s and 1.6 for gusts, pushing in the middle.
  const shoot = (place: string) => onPad(20, (draft) => {
    Object.assign(draft.kit.parts.body, { centreMm: [0, 0, -37], solids: [{ shape: 'box', sizeMm: [1000, 1000, 1000], atMm: [0, 200, 213] }] });
    draft.days.one.windMps = 2;
    draft.shots.portrait.place = place;
    draft.assumptions = { 'balance.windOffCentre': 0 };
  });
  const still = askOne(shoulder, shoot('interior'), 'glass=normal');
  const answer = askOne(shoulder, shoot('exterior'), 'glass=normal');
  // From the drawing: the body's base is 60 mm below its middle and stands on the plate; 45 mm more to the wedge, 50 to the shoulder.
  const highMm = 200 + 60 + 45 + 50;
  // The base lies 17 mm ahead of the body's middle, over the plate's middle; the shoulder 20 mm behind that.
  const aheadMm = 250 - 17 + 20;
  const pushN = 0.5 * 1.225 * 3.2 ** 2 * 1.05;
  const stillN = still.needs?.amount.value ?? Number.NaN;
  // What is seen of the cube from each of eight sides, and its push along and across the camera.
  const hands = [0, 1, 2, 3, 4, 5, 6, 7].map((side) => {
    const angle = (side * Math.PI) / 8;
    const force = pushN * (Math.abs(Math.cos(angle)) + Math.abs(Math.sin(angle)));
    return Math.hypot(stillN + (Math.abs(force * Math.cos(angle)) * highMm) / 300, (force * Math.sin(angle) * aheadMm) / 300);
  });
  expect(answer.needs?.amount.value).toBeCloseTo(Math.max(...hands), 3);
  expect(answer.steps?.find(({ says }) => says === 'hands hold in still air')?.amount?.value).toBeCloseTo(stillN, 9);
  expect(still.steps?.some(({ says }) => says.includes('gust'))).toBe(false);
});

test('in wind too, sliding the pad brings the use it promises', () => {
  const shoot = onPad(120, (draft) => {
    nothingLoose(draft);
    draft.kit.parts.pad.points.top.slideMm = [-90, 90];
    draft.days.one.windMps = 6;
    draft.shots.portrait.place = 'exterior';
  });
  const mend = askOne(shoulder, shoot, 'glass=normal').mends?.find(({ edit }) => edit !== undefined);
  const after = applyEdit(shoot, mend!.edit!);
  if (!after.ok) throw new Error('The edit has faults.');
  // The pad itself stays where it is as the rig goes: the outline is not quite the same.
  expect(askOne(shoulder, after.value.shoot, 'glass=normal').use! / mend!.use!).toBeCloseTo(1, 1);
});
