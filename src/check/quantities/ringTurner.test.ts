import { describe, expect, test } from 'vitest';
import { drivenShoot } from '../../../test/drivenShoot.ts';
import { tinyShoot } from '../../../test/tinyShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { Asking } from '../Asking.ts';
import { NotEntered } from '../NotEntered.ts';
import { controlDelay } from './controlDelay.ts';
import { handWheel, stepDegOf } from './handWheel.ts';
import { ringTurner } from './ringTurner.ts';

const subject = { setup: 'sticks', glass: 'normal' };
const turnerOf = (shoot: Shoot) => ringTurner(new Asking(new Ledger(shoot)), subject);
const secondMotor = (draft: { builds: { camera: { pieces: Record<string, unknown> } } }) => Object.assign(draft.builds.camera.pieces, { zoom: { of: 'motor', gearTeeth: 30 } });
const gearPoint = { kind: 'gear', at: [0, 0, 0], out: [0, 0, 1] };

describe('which motor or wheel turns the ring', () => {
  test('the only motor, and it says that it is taken', () => {
    expect(turnerOf(drivenShoot())).toMatchObject({ kind: 'motor', teeth: 40, says: expect.stringContaining('only motor') as string });
  });

  test('of two, the one that meshes with it; its fitted gear counts', () => {
    const shoot = drivenShoot((draft) => {
      secondMotor(draft);
      draft.kit.parts.motor.points = { gear: gearPoint };
      draft.glasses.normal.joints['focus-mesh'] = { a: 'zoom/gear', b: 'focuser/gear', mesh: true };
    });
    expect(turnerOf(shoot)).toMatchObject({ teeth: 30, piece: { id: 'zoom' } });
  });

  test('of two without a mesh it cannot be told', () => {
    expect(() => turnerOf(drivenShoot(secondMotor))).toThrow(NotEntered);
  });

  test('without a motor a geared wheel, without that a hand on the ring', () => {
    expect(turnerOf(tinyShoot())).toBeUndefined();
    const wheel = tinyShoot((draft) => {
      draft.kit.parts.wheel = { name: 'Wheel', kind: 'follow focus', handWheel: { turnDeg: 300, gear: { module: 0.8, teeth: 62 }, ratio: 2 } };
      draft.builds.camera.pieces.wheel = { of: 'wheel' };
    });
    expect(turnerOf(wheel)).toMatchObject({ kind: 'wheel', teeth: 62 });
    // Two turns of its gear for one of the wheel, 62 teeth on 124: the ring turns as the wheel does.
    expect(handWheel(new Asking(new Ledger(wheel)), subject)?.ringDegPerDeg).toBeCloseTo(1, 12);
  });
});

test('the delay from hand to ring is the sum of hand unit, radio and motor: 5 + 9 + 6 ms', () => {
  const asking = new Asking(new Ledger(drivenShoot()));
  expect(controlDelay(asking, subject).value).toBe(20);
});

test('a mapped wheel turns the whole throw in its whole turn: 270° over 2700 steps are 0.1° a step', () => {
  const wheel = handWheel(new Asking(new Ledger(drivenShoot())), subject);
  expect(wheel).toMatchObject({ mapped: true, ringDegPerDeg: 1 });
  expect(wheel && stepDegOf(wheel)).toBeCloseTo(0.1, 12);
});
