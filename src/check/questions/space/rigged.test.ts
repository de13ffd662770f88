import { expect, test } from 'vitest';
import { applyEdit } from '../../../shoot/edit/Edit.ts';
import type { Shoot } from '../../../shoot/schema/shoot.ts';
import type { Answer } from '../../answer.ts';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { cables } from './cables.ts';
import { gearFace } from './gearFace.ts';
import { gearReach } from './gearReach.ts';
import { loops } from './loops.ts';
import { mates } from './mates.ts';
import { order } from './order.ts';
import { rodLength } from './rodLength.ts';

test('a joint whose threads differ is told with what would help, and so is a setting beyond its range', () => {
  expect(askAll(mates, riggedShoot()).map(({ verdict }) => verdict)).toEqual(['good', 'good']);
  const odd = riggedShoot((draft: Draft) => {
    draft.kit.parts.body.points.base.class = '3/8-16';
    draft.builds.camera.joints['body-on-plate'].settings = { slideMm: 95 };
  });
  const answer = askOne(mates, odd);
  expect(answer).toMatchObject({ verdict: 'fails', says: 'Body does not go on Plate with rod seats: 1/4-20 does not go with 3/8-16.' });
  expect(answer.mends?.[0]?.says).toBe('A bush or a double screw, 1/4-20 to 3/8-16');
  expect(answer.steps?.[0]?.says).toContain('is set to 95');
});

test('threads written in another way are the same threads', () => {
  const same = riggedShoot((draft: Draft) => {
    draft.kit.parts.body.points.base.class = '1/4"-20';
  });
  expect(askOne(mates, same).verdict).toBe('good');
});

test('gears at m(z₁ + z₂)/2 reach; a motor out of reach is said to be, with the range that stops it', () => {
  // 0.8 · (124 + 40)/2 = 65.6 mm, ISO 53 and DIN 780.
  expect(askOne(gearReach, riggedShoot()).needs?.amount.value).toBeCloseTo(65.6, 6);
  const short = riggedShoot((draft: Draft) => {
    draft.kit.parts.motor.points.clamp.slideMm = undefined;
    draft.builds.camera.joints['motor-on-rod'].settings.slideMm = { auto: 'perLens', low: 0, high: 60 };
  });
  const answer = askOne(gearReach, short);
  expect(answer.verdict).toBe('fails');
  expect(answer.notes?.[0]).toMatch(/ends at 60.+would have to be/);
  expect(askAll(gearFace, short)).toEqual([]);
  // The rod goes on for 240 mm: only the limit stands in the way, and the same edit serves one lens.
  expect(askOne(gearReach, edited(short, answer), 'glass=normal').verdict).toBe('good');
});

test('a gear whose width nobody entered may reach, and it is said what was taken for it', () => {
  const open = riggedShoot((draft: Draft) => {
    delete draft.kit.parts.motor.motor.gear.faceMm;
  });
  expect(askOne(gearReach, open)).toMatchObject({ verdict: 'good', notes: [expect.stringContaining('How wide the gear of Motor on a clamp is, is not entered')] });
});

const plain = ({ says }: { readonly says: string }): string => says.replaceAll(/\s/g, ' ');

/** The shoot after the first mend of an answer that holds an edit. */
function edited(shoot: Shoot, { mends }: Answer): Shoot {
  const after = applyEdit(shoot, mends!.find(({ edit }) => edit !== undefined)!.edit!);
  if (!after.ok) throw new Error(after.faults[0]?.message);
  return after.value.shoot;
}

/** The rods pushed back through their seats, of a length. */
const pushedBack = (byMm: number, lengthMm = 300, change: (draft: Draft) => void = () => undefined) =>
  riggedShoot((draft: Draft) => {
    const { rod } = draft.kit.parts;
    rod.beam = { outerMm: 15, innerMm: 12, lengthMm, material: 'aluminium' };
    rod.points.back.slideMm = [-lengthMm, 0];
    rod.points.along.slideMm = [0, lengthMm];
    rod.solids = [{ shape: 'cylinder', diameterMm: 15, lengthMm, along: 'z', atMm: [0, 0, lengthMm / 2] }];
    for (const side of ['rod-left', 'rod-right']) draft.builds.camera.joints[side].settings = { slideMm: -byMm };
    change(draft);
  });

test.each(['focuser/gear first', 'motor/gear first'])('a motor at the end of a rod that sits too far back: the rod slides or is longer, the focuser stays; %s', (way) => {
  const turned = (draft: Draft) => {
    if (way === 'motor/gear first') Object.assign(draft.builds.camera.joints.mesh, { a: 'motor/gear', b: 'focuser/gear' });
  };
  // The motor's clamp belongs 158 mm ahead of the seats with the long lens (the drawing); a rod 200 mm back ends at 100, half a clamp before that at 88: 70 mm short.
  const shoot = pushedBack(200, 300, turned);
  const answer = askOne(gearReach, shoot, 'glass=normal');
  expect(answer).toMatchObject({ verdict: 'fails', says: 'Motor on a clamp does not reach the gear of Variable diopter: it turns beside it.' });
  expect(answer.mends?.map(plain)).toEqual([
    'Slide “15 mm rod, 300 mm” at camera left 70 mm forward on Plate with rod seats', 'A rod at least 70 mm longer than “15 mm rod, 300 mm” at camera left, with Motor on a clamp on the length it gains',
  ]);
  const rod = askOne(rodLength, shoot, 'camera/rod-left');
  expect(rod).toMatchObject({ verdict: 'fails', says: expect.stringMatching(/too short for Motor on a clamp to reach.+or sits too far back/) as string, needs: { amount: { value: expect.closeTo(370, 1) as number } } });
  const mended = edited(shoot, answer);
  for (const question of [gearReach, gearFace]) expect(askAll(question, mended).map(({ verdict }) => verdict)).toEqual(['good', 'good']);
  expect(askAll(rodLength, mended).filter(({ subject }) => subject.piece === 'camera/rod-left').map(({ verdict }) => verdict)).not.toContain('fails');
  // 70 mm more at the front, and 69 mm: the one does, the other does not.
  expect(askAll(rodLength, pushedBack(200, 370, turned)).map(({ verdict }) => verdict)).not.toContain('fails');
  expect(askAll(rodLength, pushedBack(200, 369, turned)).map(({ verdict }) => verdict)).toContain('fails');
});

test('a motor clamped at a stated place slides by what its gear is off, for this lens', () => {
  const shoot = riggedShoot((draft: Draft) => { draft.builds.camera.joints['motor-on-rod'].settings.slideMm = 100; });
  const answer = askOne(gearReach, shoot, 'glass=long');
  // From 100 to 158 mm.
  expect(answer.mends?.map(plain)[0]).toBe('Slide Motor on a clamp 58 mm forward on “15 mm rod, 300 mm”');
  expect(askOne(gearReach, edited(shoot, answer), 'glass=long').verdict).toBe('good');
});

test('a second hold that nothing can bring together is told with its misfit', () => {
  const crooked = riggedShoot((draft: Draft) => {
    draft.kit.parts.bridge = {
      name: 'Bridge', kind: 'support', massG: 100,
      points: {
        left: { kind: 'rod clamp', class: '15 mm', at: [30, 0, 0], out: [0, 0, -1], up: [0, 1, 0] },
        right: { kind: 'rod clamp', class: '15 mm', at: [-33, 0, 0], out: [0, 0, -1], up: [0, 1, 0] },
      },
    };
    draft.builds.camera.pieces.bridge = { of: 'bridge' };
    draft.builds.camera.joints['bridge-left'] = { a: 'rod-left/along', b: 'bridge/left', settings: { slideMm: 200 } };
    draft.builds.camera.joints['bridge-right'] = { a: 'rod-right/along', b: 'bridge/right', settings: { slideMm: 200 } };
  });
  // Rods 60 mm apart, bores 63 mm apart: 3 mm, which no turn of the clamps takes up.
  const answer = askOne(loops, crooked, 'bridge');
  expect(answer.verdict).toBe('fails');
  expect(answer.use).toBeGreaterThan(2);
});

test('a cable shorter than the straight way between its ends cannot be long enough', () => {
  const wired = (lengthMm: number) => riggedShoot((draft: Draft) => {
    const { body, 'monitor-5': screen } = draft.kit.parts;
    body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1] };
    body.ports['sdi-out'].at = [0, 0, -90];
    screen.points = { foot: { kind: 'thread', class: '1/4-20', sex: 'male', at: [0, -240, 0], out: [0, -1, 0], up: [0, 0, 1] } };
    screen.ports['sdi-in'].at = [0, 0, 10];
    draft.builds.camera.joints.screen = { a: 'body/top', b: 'monitor/foot' };
    draft.kit.parts['coax-500'].cable.lengthMm = lengthMm;
  });
  // Screen at 300 mm above and 20 mm behind the sensor: at least √(300² + 80²) = 310 mm.
  expect(askOne(cables, wired(300), 'line').verdict).toBe('fails');
  expect(askOne(cables, wired(1200), 'line').verdict).toBe('good');
});

test('an order of assembly exists, root first, every piece once', () => {
  const answer = askOne(order, riggedShoot());
  expect(answer.verdict).toBe('good');
  expect(new Set(answer.steps?.map(({ says }) => says)).size).toBe(answer.steps?.length);
  expect(answer.steps?.[0]?.says).toBe('1. Plate with rod seats');
});
