import { fc, test as property } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { headShoot } from '../../../test/headShoot.ts';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { type Draft, exampleShoot } from '../../../test/tinyShoot.ts';
import { ATTITUDES } from '../../assembly/hold/rigLoads.ts';
import { rigNetwork } from '../../assembly/hold/rigNetwork.ts';
import { type Vector, add, cross, length, scale } from '../../assembly/placing/Transform.ts';
import { type SetupGlass, eachGlass } from '../../check/subjects.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { mechanics } from '../../standards/assumptions/mechanics.ts';
import { forcesView } from './forcesView.ts';
import type { PlacedForce, RigForces } from './rigForces.ts';

const demo = new Ledger(exampleShoot('demo'));
const rigs = eachGlass(demo).filter(({ setup, glass }) => rigNetwork(demo, setup, glass) !== undefined);

const forcesOf = (ledger: Ledger, subject: SetupGlass, load: string): RigForces => {
  const { forces } = forcesView(ledger, subject, load);
  if (!forces.ok) throw new Error(forces.says);
  return forces.value;
};

/** Force and moment about the sensor of several forces together. */
function summed(all: readonly PlacedForce[]): { readonly forceN: Vector; readonly momentNm: Vector } {
  return all.reduce((sum, { atMm, forceN, momentNm }) => ({ forceN: add(sum.forceN, forceN), momentNm: add(add(sum.momentNm, momentNm), scale(cross(atMm, forceN), 1e-3)) }), { forceN: [0, 0, 0] as Vector, momentNm: [0, 0, 0] as Vector });
}

/** Newton’s first law for a body at rest: what acts on it adds up to nothing, and turns it no way. */
function expectAtRest(all: readonly PlacedForce[], what: string): void {
  const { forceN, momentNm } = summed(all);
  expect(length(forceN), `force on ${what}`).toBeLessThan(1e-5);
  expect(length(momentNm), `moment on ${what}`).toBeLessThan(1e-5);
}

const onPiece = (ref: string, { joints, outer }: RigForces): PlacedForce[] => [
  ...outer.filter((one) => one.ref === ref),
  ...joints.flatMap((one): PlacedForce[] => (one.on === ref ? [one] : one.by === ref ? [{ ...one, forceN: scale(one.forceN, -1), momentNm: scale(one.momentNm, -1) }] : [])),
];

const LOADS = [...Object.keys(ATTITUDES), 'gust to', 'gust fro', 'teeth 0 to', 'teeth 0 fro'];

property.prop([fc.constantFrom(...rigs), fc.constantFrom(...LOADS)], { numRuns: 60 })('every piece of the demo’s rigs is at rest, and so is the whole', (subject, load) => {
  const forces = forcesOf(demo, subject, load);
  const refs = new Set([...forces.joints.flatMap(({ by, on }) => [by, on]), ...forces.outer.map(({ ref }) => ref)]);
  expect(refs.size).toBeGreaterThan(3);
  for (const ref of refs) expectAtRest(onPiece(ref, forces), ref);
  expectAtRest(forces.outer, 'the whole rig');
});

test('a hand on a screen presses with what is taken for a hand, on its face, and the rig is at rest', () => {
  const hands = rigs.flatMap((subject) => forcesView(demo, subject, 'upright').loads.filter(({ says }) => says.includes('a hand on')).map(({ id }) => ({ subject, id })));
  expect(hands.length).toBeGreaterThan(3);
  for (const { subject, id } of hands) {
    const forces = forcesOf(demo, subject, id);
    const [hand, ...more] = forces.outer.filter(({ kind }) => kind === 'hand');
    expect(more).toEqual([]);
    expect(length(hand?.forceN ?? [0, 0, 0])).toBeCloseTo(mechanics.knobForceN.value, 9);
    expectAtRest(forces.outer, 'the whole rig');
    expectAtRest(onPiece(hand?.ref ?? '', forces), hand?.ref ?? '');
  }
});

test('a 2 kg body on a head weighs 19.6 N through every joint down to it (9.80665 m/s², CGPM 1901), and 17 mm off the screw turn it by 0.33 N·m', () => {
  const ledger = new Ledger(headShoot());
  const { joints, outer } = forcesOf(ledger, { setup: 'sticks', glass: 'normal' }, 'upright');
  const head = joints.find(({ by }) => by === 'camera/head');
  const weightN = 2 * 9.80665;
  expect(head?.forceN[1]).toBeCloseTo(weightN, 6);
  expect(outer.filter(({ kind }) => kind === 'ground').reduce((sum, { forceN }) => sum + forceN[1], 0)).toBeCloseTo(5 * 9.80665, 6);
  expect(Math.abs(head?.momentNm[0] ?? 0)).toBeCloseTo(weightN * 0.017, 3);
});

test('the teeth push by torque over radius, and 20° apart: a 120-tooth gear of 0.8 module has 48 mm (ISO 53, ISO 21771)', () => {
  const ledger = new Ledger(riggedShoot((draft) => {
    draft.kit.parts.focuser.focus.ringTorqueNm = { value: 0.48, plusMinus: 0, basis: 'measured' };
    draft.kit.parts.focuser.focus.gear = { module: 0.8, teeth: 120, faceMm: 10 };
    draft.days.one.temperatureC = 20;
    draft.assumptions = { ...draft.assumptions, 'focus.warmAtC': 20 };
  }));
  const { outer } = forcesOf(ledger, { setup: 'sticks', glass: 'normal' }, 'teeth 0 to');
  const teeth = outer.filter(({ kind }) => kind === 'teeth');
  expect(teeth).toHaveLength(2);
  expect(length(teeth[0]?.forceN ?? [0, 0, 0])).toBeCloseTo(10 / Math.cos((20 * Math.PI) / 180), 1);
});

test('a gust pushes level, four times as hard at twice the speed (Bernoulli 1738), and all of it on what holds the rig; without wind none is offered', () => {
  const subject = { setup: 'sticks', glass: 'normal' };
  const windy = (windMps: number) => new Ledger(headShoot((draft) => {
    for (const shot of Object.values(draft.shots as Draft)) delete (shot as Draft).place;
    for (const day of Object.values(draft.days as Draft)) (day as Draft).windMps = windMps;
  }));
  const [calm, blown, twice] = [0, 6, 12].map(windy) as [Ledger, Ledger, Ledger];
  expect(forcesView(calm, subject, 'upright').loads.filter(({ says }) => says.includes('gust'))).toEqual([]);
  expect(forcesView(blown, subject, 'upright').loads.filter(({ says }) => says.startsWith('its own weight and a gust from'))).toHaveLength(2);
  const gust = (ledger: Ledger, load: string): Vector => summed(forcesOf(ledger, subject, load).outer.filter(({ kind }) => kind === 'wind')).forceN;
  expect(gust(blown, 'gust to')[1]).toBeCloseTo(0, 9);
  expect(length(gust(blown, 'gust to'))).toBeGreaterThan(0.5);
  expect(length(gust(twice, 'gust to')) / length(gust(blown, 'gust to'))).toBeCloseTo(4, 6);
  expect(add(gust(blown, 'gust to'), gust(blown, 'gust fro')).every((one) => Math.abs(one) < 1e-9)).toBe(true);
  const held = summed(forcesOf(blown, subject, 'gust to').outer.filter(({ kind }) => kind === 'ground')).forceN;
  expect(length(add(held, add(gust(blown, 'gust to'), [0, -5 * 9.80665, 0])))).toBeCloseTo(0, 5);
});

test('pieces that move freely are named instead of solved', () => {
  const ledger = new Ledger(riggedShoot((draft) => (draft.kit.parts.motor.points.clamp.stiffness = { zNmPerRad: 1e-18 })));
  const { loose, forces } = forcesView(ledger, { setup: 'sticks', glass: 'normal' }, 'upright');
  expect(loose).toEqual(['Motor on a clamp']);
  expect(forces).toMatchObject({ ok: false });
});

test('a rig free in the hands is taken as held at its anchor, and says so', () => {
  const subject = rigs.find(({ setup }) => setup === 'boathouse-alone') as SetupGlass;
  const { notes, forces } = forcesView(demo, subject, 'upright');
  expect(notes[0]).toMatch(/^Free in the hands; taken as held at/);
  expect(forces.ok && forces.value.outer.filter(({ kind }) => kind === 'ground')).toHaveLength(1);
});
