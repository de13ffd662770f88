import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import type { Draft } from '../../../../test/tinyShoot.ts';
import { cables } from './cables.ts';
import { gearFace } from './gearFace.ts';
import { gearReach } from './gearReach.ts';
import { loops } from './loops.ts';
import { mates } from './mates.ts';
import { order } from './order.ts';

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
  const face = askOne(gearFace, short);
  expect(face.verdict).toBe('fails');
  expect(face.notes?.[0]).toMatch(/ends at 60.+would have to be/);
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
