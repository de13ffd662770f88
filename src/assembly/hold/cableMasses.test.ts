import { expect, test } from 'vitest';
import { askOne } from '../../../test/ask.ts';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { type Draft, tinyShoot } from '../../../test/tinyShoot.ts';
import { Asking } from '../../check/Asking.ts';
import { wholeMass } from '../../check/quantities/wholeMass.ts';
import { payload } from '../../check/questions/balance/payload.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import { apply } from '../placing/Transform.ts';
import { cableMasses } from './cableMasses.ts';

const cablesOf = (shoot: Shoot, build = 'camera') => cableMasses(new Ledger(shoot), 'sticks', 'normal', build);

test('each cable hangs with half its mass on either plug; one without a mass, and a line without a cable, are named', () => {
  const { weighed, unweighed } = cablesOf(tinyShoot((draft) => {
    draft.kit.parts['tap-400'].massG = 40;
    delete draft.builds.camera.lines.picture.cable;
  }));
  expect(weighed.map(({ piece, massG }) => [piece.id, massG])).toEqual([['pack', 20], ['body', 20], ['pack', 20], ['monitor', 20]]);
  expect(unweighed.map(({ line, name }) => [line, name])).toEqual([['camera/picture', undefined], ['camera/picture', undefined]]);
});

test('of a cable of 20 m and 1 kg to the director, the assumed 1.2 m hang: 60 g; of one of 1 m half', () => {
  const leading = (lengthMm: number) => tinyShoot((draft) => {
    draft.kit.parts.far = { ...structuredClone(draft.kit.parts['coax-500']), name: 'Far coax', massG: 1000 };
    draft.kit.parts.far.cable.lengthMm = lengthMm;
    draft.builds.away = { name: 'Away', purpose: 'viewing station', station: true, pieces: { monitor: { of: 'monitor-5' } } };
    draft.setups.sticks.stations = ['away'];
    draft.builds.camera.lines.picture = { from: 'body/sdi-out', to: 'away/monitor/sdi-in', cable: 'far' };
  });
  expect(cablesOf(leading(20_000)).weighed).toMatchObject([{ massG: 60, piece: { id: 'body' } }]);
  expect(cablesOf(leading(20_000), 'away').weighed).toMatchObject([{ massG: 60, piece: { id: 'monitor' } }]);
  expect(cablesOf(leading(1000)).weighed).toMatchObject([{ massG: 500 }]);
});

/** A lead of 1 kg from the body to the motor, its plugs 50 mm to the side of the one and above the other. */
const led = (massG: number | undefined, change: (draft: Draft) => void = () => undefined) => riggedShoot((draft) => {
  const { lines, pieces } = draft.builds.camera;
  for (const id of Object.keys(lines)) delete lines[id];
  draft.kit.parts.body.ports['sdi-out'].at = [50, 0, 0];
  draft.kit.parts.motor.ports = { in: { kind: 'video', way: 'in', connector: 'BNC', sex: 'female', at: [0, 50, 0] } };
  if (massG !== undefined) draft.kit.parts['coax-500'].massG = massG;
  lines.lead = { from: 'body/sdi-out', to: 'motor/in', cable: 'coax-500' };
  draft.kit.parts.head = { name: 'Head', kind: 'head', massG: 3000, carrier: { kind: 'head', payloadG: 9000 } };
  pieces.head = { of: 'head' };
  change(draft);
});

test('its centre is between the plugs: Σ m·r of the rig with the middle of them', () => {
  const subject = { setup: 'sticks', glass: 'normal' };
  const [without, ledger] = [new Ledger(led(undefined)), new Ledger(led(1000))];
  const [bare, whole] = [without, ledger].map((one) => wholeMass(new Asking(one), subject, 'camera', () => true));
  if (bare === undefined || whole === undefined) throw new Error('nothing is placed');
  const { places } = placeSetup(ledger, subject.setup, subject.glass);
  const [body, motor] = [places.get('camera/body'), places.get('camera/motor')];
  if (body === undefined || motor === undefined) throw new Error('they have no place');
  const [from, to] = [apply(body, [50, 0, 0]), apply(motor, [0, 50, 0])];
  expect(whole.massG).toBeCloseTo(bare.massG + 1000, 6);
  for (const at of [0, 1, 2] as const) expect(whole.centreMm[at]).toBeCloseTo((bare.massG * bare.centreMm[at] + (1000 * (from[at] + to[at])) / 2) / (bare.massG + 1000), 6);
});

test('what carries the rig carries the lead; half of one that ends in the head itself', () => {
  const needs = (shoot: Shoot) => askOne(payload, shoot, 'glass=normal|piece=camera/head').needs?.amount.value ?? Number.NaN;
  const toHead = (draft: Draft) => {
    draft.kit.parts.head.ports = draft.kit.parts.motor.ports;
    draft.builds.camera.lines.lead.to = 'head/in';
  };
  expect(needs(led(1000)) - needs(led(undefined))).toBeCloseTo(1000, 6);
  expect(needs(led(1000, toHead)) - needs(led(undefined))).toBeCloseTo(500, 6);
  expect(askOne(payload, led(undefined), 'glass=normal|piece=camera/head').notes?.join(' ')).toContain('Weighs nothing here: Coax 0.5 m.');
});
