import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, exampleShoot } from '../../../../test/tinyShoot.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { cross, subtract } from '../../../assembly/placing/Transform.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { toothPushes } from '../../quantities/toothForce.ts';
import { jump } from './jump.ts';

const FIRM = { xNPerMm: 1e9, yNPerMm: 1e9, zNPerMm: 1e9, xNmPerRad: 1e9, yNmPerRad: 1e9, zNmPerRad: 1e9 };
const still = { 'hold.seatPlayMm': 0 };

test('the taking lens gives at its seat alone, as a lever on two springs does', () => {
  const answer = askOne(jump, riggedShoot((draft) => {
    draft.assumptions = still;
    draft.kit.parts['taking-58'].points.mount.stiffness = { xNPerMm: 10_000, yNPerMm: 10_000, zNPerMm: 15_000, xNmPerRad: 3000, yNmPerRad: 3000, zNmPerRad: 2500 };
  }), 'glass=normal');
  // Statics by hand: all of the push goes through the seat at 18 mm. It acts at the gear, 62 + 70 + 28 mm ahead of it; the principal point of 58 mm lies 40 mm ahead.
  const forceN = answer.steps?.[0]?.amount?.value ?? Number.NaN;
  const shiftMm = 2 * (forceN / 10_000 + ((forceN * 0.16) / 3000) * 40);
  expect(answer.steps?.[1]?.amount?.value).toBeCloseTo(shiftMm / (23.8 / 3968), 6);
});

test('the push of the teeth is the torque of the ring over its pitch radius', () => {
  const warm = riggedShoot((draft) => {
    draft.assumptions = still;
    for (const day of Object.values<{ temperatureC: number }>(draft.days)) day.temperatureC = 25;
  });
  // m·z/2 = 0.8 × 124/2 = 49.6 mm (ISO 21771).
  expect(askOne(jump, warm, 'glass=normal').steps?.[0]?.amount?.value).toBeCloseTo(0.18 / 0.0496, 6);
});

test('twice the torque, twice the jump; a collar takes the lever away', () => {
  const at = (torqueNm: number) => askOne(jump, riggedShoot((draft) => {
    draft.assumptions = still;
    draft.kit.parts.focuser.focus.ringTorqueNm = torqueNm;
  }), 'glass=normal');
  const [one, two] = [at(0.2), at(0.4)];
  expect((two.steps?.[1]?.amount?.value ?? 0) / (one.steps?.[1]?.amount?.value ?? 1)).toBeCloseTo(2, 6);
  expect(two.verdict).toBe('fails');
  // Common practice: a collar that takes the push in the barrel itself removes the lever.
  expect(two.mends?.[0]?.use).toBeLessThan(0.01);
  expect(two.notes).toContain('Estimate, not a load rating.');
});

test('a block that turns with its lens throws the picture by f·θ·(1 − 1/q), against the shift of the lens', () => {
  const shoot = riggedShoot((draft) => {
    draft.assumptions = still;
    draft.kit.parts['taking-58'].points.mount.stiffness = { xNPerMm: 10_000, yNPerMm: 10_000, zNPerMm: 15_000, xNmPerRad: 3000, yNmPerRad: 3000, zNmPerRad: 1e9 };
    draft.kit.parts['taking-58'].points.front.stiffness = FIRM;
  });
  const answer = askOne(jump, shoot, 'glass=normal');
  const [push] = toothPushes(new Ledger(shoot), 'sticks', 'normal');
  const forceN = answer.steps?.[0]?.amount?.value ?? Number.NaN;
  // Statics by hand: the push at 160 mm from the seat turns lens and block by F·0.16/3000 each way; across only the share of it that points across.
  const thetaRad = (2 * forceN * 0.16) / 3000;
  const across = push?.along[0] ?? Number.NaN;
  const pixelMm = 23.8 / 3968;
  const yawPx = (58 * thetaRad * (1 - 1 / 1.5) * across) / pixelMm;
  expect(answer.steps?.find(({ says }) => says.startsWith('the block turns'))?.amount?.value).toBeCloseTo(Math.abs(yawPx), 3);
});

test('a gear that the driver does not reach pushes nothing: another question’s finding', () => {
  const away = riggedShoot((draft) => (draft.builds.camera.joints['motor-on-rod'].settings.turnDeg = -40));
  expect(askAll(jump, away).filter(({ key }) => key.includes('glass=normal'))).toEqual([]);
});

/** All is firm but the screw between body and plate. */
const onPlate = (change: (draft: Draft) => void = () => undefined) =>
  riggedShoot((draft) => {
    for (const part of Object.values<Draft>(draft.kit.parts)) for (const point of Object.values<Draft>(part.points ?? {})) point.stiffness = FIRM;
    draft.kit.parts.plate.points.top.stiffness = undefined;
    draft.kit.parts.body.points.base.stiffness = { ...FIRM, xNmPerRad: 1000, yNmPerRad: 1000, zNmPerRad: 1000 };
    change(draft);
  });
const frameOf = (answer: ReturnType<typeof askOne>) => answer.steps?.find(({ says }) => says === 'the camera itself turns')?.amount?.value ?? Number.NaN;

test('a camera that gives on its plate takes the picture along', () => {
  const shoot = onPlate();
  const answer = askOne(jump, shoot, 'glass=normal');
  const ledger = new Ledger(shoot);
  const [push] = toothPushes(ledger, 'sticks', 'normal');
  const plate = placeSetup(ledger, 'sticks', 'normal').places.get('camera/plate');
  if (push === undefined || plate === undefined) throw new Error('Motor or plate have no place.');
  // Statics by hand: ring and motor push each other, so that only the screw between body and plate gives, by F × arm over 1000 N·m/rad, to either side; f·θ up and down, f·θ/q across.
  const forceN = answer.steps?.[0]?.amount?.value ?? Number.NaN;
  const [x, y] = cross(subtract(push.at, plate.t), push.along).map((arm) => (2 * forceN * arm) / 1e6);
  const px = (58 * Math.hypot(x ?? Number.NaN, (y ?? Number.NaN) / 1.5)) / (23.8 / 3968);
  expect(frameOf(answer)).toBeCloseTo(px, 3);
  expect(answer.needs?.amount.value).toBeGreaterThan(px * 0.9);
});

test('on a shoulder plate and camera turn against each other about the mass of the rig: the camera turns less than against a head', () => {
  const shoulder = askOne(jump, onPlate((draft) => (draft.builds.camera.purpose = 'shoulder')), 'glass=normal');
  expect(frameOf(shoulder)).toBeGreaterThan(0);
  expect(frameOf(shoulder)).toBeLessThan(frameOf(askOne(jump, onPlate(), 'glass=normal')));
});

test('the steps end in what they come to: where ways go against each other it is said, and roll is told in pixels at the corner', () => {
  const answer = askOne(jump, exampleShoot('demo'), 'setup=jetty-shoulder|glass=block-58');
  const steps = answer.steps ?? [];
  const at = (words: string) => steps.find(({ says }) => says.includes(words))?.amount?.value ?? Number.NaN;
  const sum = at('the taking lens shifts') + at('free play') + at('turns to the side') + at('camera itself turns');
  const middle = at('all together at the middle');
  // Directions in a plane: together never more than their sum, and what is less has partly cancelled.
  expect(middle).toBeLessThan(sum);
  expect(steps.find(({ says }) => says.startsWith('all together'))?.says).toContain('partly cancel');
  expect(at('at a corner')).toBeCloseTo(middle + at('a corner of the picture shifts'), 9);
  expect(answer.needs?.amount.value).toBe(at('at a corner'));
});
