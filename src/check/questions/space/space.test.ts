import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { cables } from './cables.ts';
import { collisions } from './collisions.ts';
import { fingerRoom } from './fingerRoom.ts';
import { gearFace } from './gearFace.ts';
import { gearFit } from './gearFit.ts';
import { gearReach } from './gearReach.ts';
import { loops } from './loops.ts';
import { mates } from './mates.ts';
import { monitor } from './monitor.ts';
import { order } from './order.ts';
import { rodLength } from './rodLength.ts';

/** Answers of the placed example are reckoned here by hand from its drawing: lengths add, circles meet. */
const rigged = riggedShoot;

test('mates: the example goes together; 3/8-16 on 1/4-20 does not, and says so', () => {
  expect(askOne(mates, rigged()).verdict).toBe('good');
  const wrong = rigged((draft) => (draft.kit.parts.body.points.base.class = '3/8-16'));
  expect(askOne(mates, wrong)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('does not go on') as string });
});

test('gearReach: meshes at 0.8·(124 + 40)/2 = 65.6 mm; held away it does not reach', () => {
  const answer = askOne(gearReach, rigged());
  expect(answer.needs?.amount.value).toBeCloseTo(65.6, 6);
  expect(answer.verdict).toBe('good');
  const away = rigged((draft) => (draft.builds.camera.joints['motor-on-rod'].settings.turnDeg = -80));
  expect(askOne(gearReach, away)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('does not reach') as string });
});

test('gearReach: a lens without a gear is told as that', () => {
  const bare = rigged((draft) => delete draft.kit.parts.focuser.focus.gear);
  expect(askOne(gearReach, bare)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('has no gear') as string });
});

test('gearFace: 10 and 14 mm faces in line share 10; a travel of 12 mm leaves 2', () => {
  expect(askOne(gearFace, rigged()).has?.amount.value).toBeCloseTo(10, 3);
  const travels = rigged((draft) => {
    draft.kit.parts.focuser.focus.gearTravelMm = 12;
    Object.assign(draft.builds.camera.joints['motor-on-rod'].settings, { slideMm: 132 });
  });
  const answer = askOne(gearFace, travels, 'glass=normal');
  expect(answer.has?.amount.value).toBeLessThan(10);
});

test('gearFit: 32 diametral pitch is 0.79375 module: near, and no match', () => {
  const inch = rigged((draft) => (draft.kit.parts.motor.motor.gear.module = 0.79375));
  expect(askOne(gearFit, inch)).toMatchObject({ verdict: 'fails', says: expect.stringContaining('inch gear') as string });
  expect(askOne(gearFit, rigged((draft) => (draft.kit.parts.focuser.focus.gear.split = true)))).toMatchObject({ verdict: 'tight' });
});

test('collisions: the example is clear; a box round the lens is in its way', () => {
  expect(askOne(collisions, rigged()).verdict).toBe('good');
  const boxed = rigged((draft) => draft.kit.parts.plate.solids.push({ shape: 'box', sizeMm: [40, 40, 40], atMm: [0, 60, 80] }));
  expect(askOne(collisions, boxed).verdict).toBe('fails');
});

test('rodLength: a clamp 158 mm out on a rod of 160 mm is too far with half its width', () => {
  expect(askAll(rodLength, rigged()).every(({ verdict }) => verdict === 'good')).toBe(true);
  const short = rigged((draft) => (draft.kit.parts.rod.beam = { outerMm: 15, innerMm: 12, lengthMm: 160, material: 'aluminium' }));
  const answer = askAll(rodLength, short).find(({ subject }) => subject.glass === 'long' && subject.piece === 'camera/rod-left');
  expect(answer?.needs?.amount.value).toBeCloseTo(158 + 12, 1);
  expect(answer?.verdict).toBe('fails');
});

test('loops: a support that must rise 30 mm and may rise 10 does not close, and says which range stops it', () => {
  const supported = (high: number) =>
    rigged((draft) => {
      draft.kit.parts['taking-58'].points.bottom = { kind: 'surface', at: [0, -32, 30], out: [0, -1, 0], up: [0, 0, 1] };
      draft.kit.parts.support = { name: 'Lens support', kind: 'support', points: { rod: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [-30, 0, 0], out: [0, 0, -1], up: [0, 1, 0] }, top: { kind: 'surface', at: [0, 18, 0], out: [0, 1, 0], up: [0, 0, 1] } } };
      draft.builds.camera.pieces.support = { of: 'support' };
      draft.builds.camera.joints.foot = { a: 'rod-right/along', b: 'support/rod', settings: { slideMm: 10 } };
      draft.glasses.normal.joints.support = { a: 'support/top', b: 'lens/bottom', settings: { heightMm: { auto: 'perLens', low: 0, high } } };
    });
  // Axis 60 above the plate, rods 20 below it: from rod to lens bottom 80 − 32 = 48 mm, less the support's 18: 30 mm.
  expect(askOne(loops, supported(40), 'glass=normal').verdict).toBe('good');
  expect(askOne(loops, supported(10), 'glass=normal')).toMatchObject({ verdict: 'fails' });
});

test('cables: straight from port to port where nothing is between, with slack and plugs', () => {
  const placed = rigged((draft) => {
    draft.kit.parts.body.points.top = { kind: 'thread', class: '1/4-20', sex: 'female', at: [0, 60, -20], out: [0, 1, 0], up: [0, 0, 1] };
    draft.kit.parts['monitor-5'].points = { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, -40, 0], out: [0, -1, 0], up: [0, 0, 1] } };
    draft.builds.camera.joints.monitor = { a: 'body/top', b: 'monitor/foot' };
    draft.kit.parts.body.ports['sdi-out'].at = [60, 0, -60];
    draft.kit.parts['monitor-5'].ports['sdi-in'].at = [30, -30, 10];
  });
  const answer = askOne(cables, placed, 'camera/picture');
  // Ports at (60, 0, −60) and, 60 + 40 up with the monitor, at (30, 70, −10) in the body's frame.
  expect(answer.needs?.amount.value).toBeCloseTo(Math.hypot(30, 70, 50) * 1.15 + 2 * 35, 6);
  expect(answer.verdict).toBe('good');
});

test('monitor: on a tripod it stands above the camera', () => {
  const on = (at: [number, number, number], out: [number, number, number]) =>
    rigged((draft) => {
      draft.kit.parts.body.points.spot = { kind: 'thread', class: '1/4-20', sex: 'female', at, out, up: [0, 0, 1] };
      draft.kit.parts['monitor-5'].points = { foot: { kind: 'hole', class: '1/4-20', sex: 'male', at: [0, -40, 0], out: [0, -1, 0], up: [0, 0, 1] } };
      draft.builds.camera.joints.monitor = { a: 'body/spot', b: 'monitor/foot' };
    });
  expect(askOne(monitor, on([0, 60, -20], [0, 1, 0])).verdict).toBe('good');
  expect(askOne(monitor, on([0, -60, -60], [0, -1, 0])).verdict).toBe('fails');
});

test('order: the example goes together in as many steps as it has placed pieces', () => {
  const answer = askOne(order, rigged(), 'glass=normal');
  expect(answer.verdict).toBe('good');
  expect(answer.steps).toHaveLength(8);
  expect(answer.steps?.[0]?.says).toContain('Plate');
});

test('fingerRoom: asked where a set changes lenses, and not where there is only one', () => {
  expect(askAll(fingerRoom, rigged()).length).toBeGreaterThan(0);
  expect(askAll(fingerRoom, rigged((draft) => (draft.setups.sticks.glasses = ['normal'])))).toEqual([]);
});
