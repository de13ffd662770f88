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

test('without a pad, and on a tripod, it does not arise', () => {
  expect(askAll(shoulder, riggedShoot())).toEqual([]);
  expect(askAll(shoulder, riggedShoot((draft) => (draft.builds.camera.purpose = 'shoulder')))).toEqual([]);
});

test('what hands hold for an hour is 7.9 % of their strength (Björkstén and Jonsson 1977)', () => {
  expect(askOne(shoulder, onPad(20), 'glass=normal').has?.amount.value).toBeCloseTo(0.079 * 300, 0);
});

test('sliding the pad brings the use it promises, whichever piece the slide is counted on', () => {
  for (const at of ['plate/bottom', 'pad/top'] as const) {
    const shoot = onPad(120, (draft) => {
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
