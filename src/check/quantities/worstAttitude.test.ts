import { expect } from 'vitest';
import { fc, test } from '@fast-check/vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { type Vector, cross, dot } from '../../assembly/placing/Transform.ts';
import { worstAttitude } from './worstAttitude.ts';

const [ON_HEAD, ON_SHOULDER] = (['tripod', 'shoulder'] as const).map((purpose) => new Ledger(riggedShoot((draft) => (draft.builds.camera.purpose = purpose)))) as [Ledger, Ledger];
/** Of a weight at `at` from a joint that turns about `axis`; x to camera left, y up, z ahead. */
const held = (ledger: Ledger, axis: Vector, at: Vector) => worstAttitude(ledger, { setup: 'sticks', glass: 'normal' }, 'camera', cross(axis, at));

const [LEFT, UP, AHEAD]: readonly Vector[] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];

test('on an upright screw a head turns only what lies to its side; on a shoulder also what lies ahead', () => {
  // Statics: about the vertical the weight of a level camera has no lever; looking straight down, what lies 30 mm to the side has 30 mm.
  expect(held(ON_HEAD, UP!, [0, 50, 80])).toEqual({ leverMm: 0, says: 'level' });
  expect(held(ON_HEAD, UP!, [30, 50, 80])).toEqual({ leverMm: 30, says: 'looking straight up or down' });
  expect(held(ON_SHOULDER, UP!, [0, 50, 80])).toEqual({ leverMm: 80, says: 'held on its side' });
});

test('about an axis across the camera tilt takes it all the way: 100 mm ahead and 100 mm up is furthest out tilted 45° down', () => {
  expect(held(ON_HEAD, LEFT!, [0, 100, 100])).toEqual({ leverMm: expect.closeTo(100 * Math.SQRT2, 9) as number, says: 'tilted 45° down' });
  expect(held(ON_HEAD, LEFT!, [0, -100, 100]).says).toBe('tilted 45° up');
  expect(held(ON_HEAD, LEFT!, [0, 0, 100])).toEqual({ leverMm: 100, says: 'level' });
});

test('what hangs straight above a screw that points ahead turns only when the camera rolls', () => {
  expect(held(ON_HEAD, AHEAD!, [0, 60, 0]).leverMm).toBe(0);
  expect(held(ON_SHOULDER, AHEAD!, [0, 60, 0])).toEqual({ leverMm: 60, says: 'held on its side' });
});

const mm = fc.double({ min: -500, max: 500, noNaN: true });
test.prop([fc.tuple(mm, mm, mm)])('the closed form is the most that any tilt gives', (at) => {
  const axis: Vector = [0.48, 0.6, 0.64];
  const lever = cross(axis, at as Vector);
  const tilts = Array.from({ length: 3601 }, (_, n) => ((n / 20 - 90) * Math.PI) / 180);
  const most = Math.max(...tilts.map((tilt) => Math.abs(dot(lever, [0, -Math.cos(tilt), Math.sin(tilt)]))));
  expect(held(ON_HEAD, axis, at as Vector).leverMm).toBeCloseTo(most, 3);
});
