import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { askOne } from '../../../test/ask.ts';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { IDENTITY, type Vector, apply, length, subtract } from '../../assembly/placing/Transform.ts';
import { wobble } from '../../check/questions/hold/wobble.ts';
import { type SwingView, swingView } from './swingView.ts';
import { swung } from './swung.ts';

const seen = (shoot: Parameters<typeof swingView>[0], setup: string, glass: string): SwingView => {
  const view = swingView(shoot, { setup, glass });
  if (!view.ok) throw new Error(view.says);
  return view.value;
};

test.each([['jetty-shoulder', 'block-58'], ['boathouse-alone', 'block-58'], ['jetty-sticks', 'set-50-box']])('the swing shown of %s is the one that is judged; its furthest point goes 1 mm', (setup, glass) => {
  const demo = exampleShoot('demo');
  const { swings, sizeMm } = seen(demo, setup, glass);
  expect(swings[0]?.frequencyHz).toBeCloseTo(askOne(wobble, demo, `setup=${setup}|glass=${glass}`).has?.amount.value ?? Number.NaN, 9);
  expect(swings.map(({ frequencyHz }) => frequencyHz)).toEqual(swings.map(({ frequencyHz }) => frequencyHz).toSorted((a, b) => a - b));
  expect(sizeMm).toBeGreaterThan(200);
  for (const { stiff, rods } of swings) {
    const shifts = [...stiff.map(({ shiftMm }) => shiftMm), ...rods.flatMap(({ places }) => places.map(({ shiftMm }) => shiftMm))].map(length);
    expect(Math.max(...shifts)).toBeLessThanOrEqual(1 + 1e-9);
    expect(Math.max(...shifts)).toBeGreaterThan(0.05);
  }
});

test('a rod that bends is shown bent: its places do not lie on one line', () => {
  const shoot = riggedShoot((draft) => (draft.kit.parts.rod.beam = { outerMm: 15, innerMm: 13, lengthMm: 300, material: 'aluminium' }));
  const { rods } = seen(shoot, 'sticks', 'normal').swings[0] as SwingView['swings'][number];
  expect(rods.map(({ ref }) => ref)).toEqual(['camera/rod-left', 'camera/rod-right']);
  expect(rods[0]?.places.length).toBeGreaterThanOrEqual(3);
  expect(rods[0]?.diameterMm).toBe(15);
});

test('what moves freely is named', () => {
  const view = swingView(riggedShoot((draft) => (draft.kit.parts.motor.points.clamp.stiffness = { zNmPerRad: 1e-18 })), { setup: 'sticks', glass: 'normal' });
  expect(view).toMatchObject({ ok: false });
  expect(view.ok ? '' : view.says).toContain('Motor on a clamp');
});

const component = fc.double({ min: -2, max: 2, noNaN: true });
const vector = fc.tuple(component, component, component);
property.prop([vector, vector, vector, vector, fc.double({ min: -30, max: 30, noNaN: true })])('a piece keeps its size however much its swing is magnified, and its middle goes straight', (aboutMm, shiftMm, turnRad, at, by) => {
  const swing = { ref: '', aboutMm, shiftMm, turnRad };
  const apart = (a: Vector, b: Vector) => length(subtract(apply(swung(swing, IDENTITY, by), a), apply(swung(swing, IDENTITY, by), b)));
  expect(apart(at, aboutMm)).toBeCloseTo(length(subtract(at, aboutMm)), 9);
  const middle = apply(swung(swing, IDENTITY, by), aboutMm);
  [0, 1, 2].forEach((k) => expect(middle[k]).toBeCloseTo((aboutMm[k] ?? 0) + by * (shiftMm[k] ?? 0), 9));
});

test('a small turn swings a point across its arm: a milliradian at a metre is a millimetre', () => {
  const [x, y, z] = apply(swung({ ref: '', aboutMm: [0, 0, 0], shiftMm: [0, 0, 0], turnRad: [0, 0.001, 0] }, IDENTITY, 1), [0, 0, 1000]);
  expect([x, y, z].map((one) => Math.round(one * 1000) / 1000)).toEqual([1, 0, 1000]);
});
