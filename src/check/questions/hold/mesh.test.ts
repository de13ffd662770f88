import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { riggedShoot } from '../../../../test/riggedShoot.ts';
import { type Draft, tinyShoot } from '../../../../test/tinyShoot.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import { add, cross, dot, scale, subtract } from '../../../assembly/placing/Transform.ts';
import { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { toothPushes } from '../../quantities/toothForce.ts';
import { mesh } from './mesh.ts';

const FIRM = { xNPerMm: 1e9, yNPerMm: 1e9, zNPerMm: 1e9, xNmPerRad: 1e9, yNmPerRad: 1e9, zNmPerRad: 1e9 };

/** Everything is firm but the seat of the taking lens. */
const onSeat = (change: (draft: Draft) => void = () => undefined) =>
  riggedShoot((draft) => {
    const points = Object.values<Draft>(draft.kit.parts).flatMap((part) => Object.values<Draft>(part.points ?? {}));
    for (const point of points) point.stiffness = FIRM;
    draft.kit.parts.body.points.mount.stiffness = undefined;
    draft.kit.parts['taking-58'].points.mount.stiffness = { ...FIRM, xNPerMm: 10_000, yNPerMm: 10_000, xNmPerRad: 3000, yNmPerRad: 3000 };
    change(draft);
  });

test('the spreading force alone parts the gears, as a lever on the seat of the lens', () => {
  const answer = askOne(mesh, onSeat(), 'glass=normal');
  // By hand: 0.5 N·m at the 16 mm of 40 teeth of 0.8 module are 31.25 N along the teeth (ISO 21771), tan 20° of it apart; the gear stands 62 + 70 + 28 mm ahead of the seat.
  const apartN = (0.5 / 0.016) * Math.tan((20 * Math.PI) / 180);
  expect(answer.steps?.[0]?.amount?.value).toBeCloseTo(31.25, 6);
  expect(answer.needs?.amount.value).toBeCloseTo(apartN / 10_000 + ((apartN * 0.16) / 3000) * 160, 4);
});

test('a soft seat lets it ride out, a collar or riding rod mends it', () => {
  const soft = onSeat((draft) => Object.assign(draft.kit.parts['taking-58'].points.mount.stiffness, { xNmPerRad: 200, yNmPerRad: 200 }));
  const answer = askOne(mesh, soft, 'glass=normal');
  expect(answer.verdict).toBe('fails');
  expect(answer.mends?.[0]?.use).toBeLessThan(0.9);
  expect(answer.notes).toContain('Estimate, not a load rating.');
});

test('carried by the glass, the seat and clamp of the drive are what still gives', () => {
  const shoot = onSeat((draft) => Object.assign(draft.kit.parts['taking-58'].points.mount.stiffness, { xNmPerRad: 200, yNmPerRad: 200 }));
  const answer = askOne(mesh, shoot, 'glass=normal');
  const ledger = new Ledger(shoot);
  const [push] = toothPushes(ledger, 'sticks', 'normal');
  const clamp = placeSetup(ledger, 'sticks', 'normal').places.get('camera/motor')?.t;
  if (push === undefined || clamp === undefined) throw new Error('The motor has no place.');
  // Statics by hand: 31.25 N along the teeth, tan 20° of it apart, on an arm from the clamp to the teeth. Two clamps one after the other give twice as much as one: 8000 N/mm across, 700 N·m/rad
  // nodding and 400 turning (standards/jointTypes); everything else is firm.
  const arm = subtract(push.at, clamp);
  const openings = [1, -1].map((sense) => {
    const onMotor = add(scale(push.along, -sense * 31.25), scale(push.away, -31.25 * Math.tan((20 * Math.PI) / 180)));
    const [mx, my, mz] = cross(arm, onMotor);
    const turn = [mx / 350_000, my / 350_000, mz / 200_000] as const;
    return -dot(add(scale(onMotor, 1 / 4000), cross(turn, arm)), push.away);
  });
  expect((answer.mends?.[0]?.use ?? 0) * (answer.has?.amount.value ?? 0)).toBeCloseTo(Math.max(...openings), 4);
});

test('gears that do not meet at all are another question’s finding', () => {
  expect(askAll(mesh, onSeat((draft) => (draft.builds.camera.joints['motor-on-rod'].settings.turnDeg = -40))).filter(({ key }) => key.includes('glass=normal'))).toEqual([]);
});

test('without a driver it does not arise', () => expect(askAll(mesh, tinyShoot())).toEqual([]));
