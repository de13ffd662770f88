import { ColliderDesc, RigidBodyDesc, World, init } from '@dimforge/rapier3d-compat';
import { fc, test as property } from '@fast-check/vitest';
import { beforeAll, expect, test } from 'vitest';
import { balance } from './balance.ts';

test('three boxes, derived by hand: centre (96.393, 4.918, 97.541) mm, 0.033344, 0.107885, 0.093296 kg·m²', () => {
  const { centreMm, inertiaKgM2 } = balance(balance.contract.examples[0].given as Parameters<typeof balance>[0]);
  [96.393, 4.918, 97.541].forEach((value, k) => expect(centreMm[k]).toBeCloseTo(value, 3));
  [0.033_344, 0.107_885, 0.093_296].forEach((value, k) => expect(inertiaKgM2[k]![k]).toBeCloseTo(value, 6));
});

const size = fc.double({ min: 5, max: 400, noNaN: true });
const place = fc.double({ min: -500, max: 500, noNaN: true });
const mass = fc.double({ min: 1, max: 5000, noNaN: true });
const box = fc.record({ massG: mass, centreMm: fc.tuple(place, place, place), boxMm: fc.tuple(size, size, size) });

beforeAll(() => init());

property.prop([fc.array(box, { minLength: 1, maxLength: 12 })])('is what a physics engine makes of the same boxes (single precision)', (bodies) => {
  const world = new World({ x: 0, y: 0, z: 0 });
  const body = world.createRigidBody(RigidBodyDesc.dynamic());
  // Grams and centimetres: the engine takes very small moments for nothing.
  for (const { massG, centreMm: [x, y, z], boxMm: [w, h, l] } of bodies) {
    const shape = ColliderDesc.cuboid(w / 20, h / 20, l / 20).setTranslation(x / 10, y / 10, z / 10);
    world.createCollider(shape.setMass(massG), body);
  }
  body.recomputeMassPropertiesFromColliders();
  const { massG, centreMm, inertiaKgM2 } = balance({ bodies });
  expect(body.mass() / massG).toBeCloseTo(1, 5);
  const { x, y, z } = body.localCom();
  [x, y, z].forEach((value, k) => expect(Math.abs(value * 10 - centreMm[k]!)).toBeLessThan(0.01));
  // The engine keeps principal moments; their sum and the sum of their squares tell the same without the axes.
  const { x: a, y: b, z: c } = body.principalInertia();
  const [i, j, k] = inertiaKgM2;
  const [trace, squares] = [i[0] + j[1] + k[2], inertiaKgM2.flat().reduce((sum, one) => sum + one * one, 0)];
  expect(((a + b + c) * 1e-7) / trace).toBeCloseTo(1, 4);
  expect(((a * a + b * b + c * c) * 1e-14) / squares).toBeCloseTo(1, 2);
  world.free();
});

const share = fc.double({ min: 0.1, max: 0.9, noNaN: true });

property.prop([box, share])('a box sawn in two weighs, hangs and swings as before', ({ massG, centreMm: [x, y, z], boxMm: [w, h, l] }, cut) => {
  const whole = balance({ bodies: [{ massG, centreMm: [x, y, z], boxMm: [w, h, l] }] });
  const halves = balance({
    bodies: [
      { massG: massG * cut, centreMm: [x - (w * (1 - cut)) / 2, y, z], boxMm: [w * cut, h, l] },
      { massG: massG * (1 - cut), centreMm: [x + (w * cut) / 2, y, z], boxMm: [w * (1 - cut), h, l] },
    ],
  });
  expect(halves.massG).toBeCloseTo(whole.massG, 8);
  halves.centreMm.forEach((value, k) => expect(value).toBeCloseTo(whole.centreMm[k]!, 8));
  const scale = Math.max(...whole.inertiaKgM2.flat());
  halves.inertiaKgM2.flat().forEach((value, k) => expect((value - whole.inertiaKgM2.flat()[k]!) / scale).toBeCloseTo(0, 9));
});

test('nothing, or nothing that weighs, has no centre of mass', () => {
  for (const bodies of [[], [{ massG: 0, centreMm: [0, 0, 0], boxMm: [1, 1, 1] }]]) {
    expect(balance.answer({ bodies })).toMatchObject({ ok: false, faults: [{ path: 'bodies' }] });
  }
});
