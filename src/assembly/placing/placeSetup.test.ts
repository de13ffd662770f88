import { mat4, quat, vec3 } from 'gl-matrix';
import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import type { Shoot } from '../../shoot/schema/shoot.ts';
import { jointTransform } from './jointFrame.ts';
import { placeSetup } from './placeSetup.ts';
import { IDENTITY, type Transform, apply, compose, inverse, turnVector, turnX, turnZ } from './Transform.ts';

const placed = (shoot: Shoot, glass: string) => placeSetup(new Ledger(shoot), 'sticks', glass);

describe('transforms agree with gl-matrix, a general-purpose library', () => {
  const angle = fc.double({ min: -170, max: 170, noNaN: true });
  const size = fc.double({ min: -500, max: 500, noNaN: true });
  property.prop([angle, angle, fc.tuple(size, size, size), fc.tuple(size, size, size)])('turns, shifts and their order', (about, tilt, shift, point) => {
    const own: Transform = { r: compose({ r: turnZ(about), t: [0, 0, 0] }, { r: turnX(tilt), t: [0, 0, 0] }).r, t: shift };
    const theirs = mat4.create();
    mat4.translate(theirs, theirs, shift);
    mat4.rotateZ(theirs, theirs, (about * Math.PI) / 180);
    mat4.rotateX(theirs, theirs, (tilt * Math.PI) / 180);
    const moved = vec3.transformMat4(vec3.create(), point, theirs);
    apply(own, point).forEach((value, axis) => expect(value).toBeCloseTo(moved[axis] ?? Number.NaN, 2));
    apply(inverse(own), apply(own, point)).forEach((value, axis) => expect(value).toBeCloseTo(point[axis] ?? Number.NaN, 6));
    const turn = quat.getAxisAngle(vec3.create(), mat4.getRotation(quat.create(), theirs));
    expect(Math.hypot(...turnVector(own.r))).toBeCloseTo(turn > Math.PI ? 2 * Math.PI - turn : turn, 3);
  });
});

describe('a set of two lenses with a motor on the rod', () => {
  test('pieces stack up along the axis: mount at the flange, block on the lens, focuser on the block', () => {
    const { places } = placed(riggedShoot(), 'normal');
    const z = (ref: string) => places.get(ref)?.t[2] ?? Number.NaN;
    expect(z('camera/lens') - z('camera/body')).toBeCloseTo(18, 9);
    expect(z('camera/block') - z('camera/lens')).toBeCloseTo(62, 9);
    expect(z('camera/focuser') - z('camera/block')).toBeCloseTo(70, 9);
  });

  test('the gears mesh at m(z₁ + z₂)/2, re-reckoned here from the places alone, and the motor follows the longer lens by its length', () => {
    const [short, long] = [placed(riggedShoot(), 'normal'), placed(riggedShoot(), 'long')];
    for (const { places } of [short, long]) {
      const [ring, motor] = [places.get('camera/focuser'), places.get('camera/motor')] as [Transform, Transform];
      const [a, b] = [apply(ring, [0, 0, 28]), apply(motor, [0, 62, 6])];
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo((0.8 * (124 + 40)) / 2, 5);
      expect(a[2]).toBeCloseTo(b[2], 5);
    }
    const slide = (one: typeof short) => one.settings.find(({ key }) => key === 'slideMm')?.value ?? Number.NaN;
    expect(slide(long) - slide(short)).toBeCloseTo(26, 4);
    expect(short.meshes[0]?.gapMm).toBeCloseTo(0, 5);
  });

  test('one shared place cannot serve both lenses: the misfit is shared out, and told', () => {
    const shared = riggedShoot((draft) => {
      draft.builds.camera.joints['motor-on-rod'].settings.slideMm = { auto: 'shared' };
    });
    const offsets = ['normal', 'long'].map((glass) => placed(shared, glass).meshes[0]?.offsetMm ?? Number.NaN);
    expect(Math.abs(offsets[0] ?? 0)).toBeCloseTo(13, 2);
    expect(offsets[0]).toBeCloseTo(-(offsets[1] ?? 0), 2);
  });

  test('the body sliding behind a fixed block: a collar on the rods holds the block, the plate finds the body’s place', () => {
    const sliding = riggedShoot((draft) => {
      draft.kit.parts['block-1-5'].points.barrel = { kind: 'collar', class: '80 mm barrel', sex: 'male', at: [0, 0, 35], out: [0, -1, 0], up: [0, 0, 1] };
      draft.kit.parts.collar = {
        name: 'Collar', kind: 'collar', massG: 200,
        points: {
          seat: { kind: 'collar', class: '80 mm barrel', sex: 'female', at: [0, 0, 0], out: [0, 1, 0], up: [0, 0, 1] },
          foot: { kind: 'rod clamp', class: '15 mm', sex: 'female', at: [30, -80, 0], out: [0, 0, -1], up: [0, 1, 0] },
        },
      };
      draft.builds.camera.pieces.collar = { of: 'collar' };
      draft.builds.camera.joints.foot = { a: 'rod-left/along', b: 'collar/foot', settings: { slideMm: 100 } };
      draft.builds.camera.joints['body-on-plate'].settings = { slideMm: { auto: 'perLens' } };
      draft.builds.camera.joints.collar = { a: 'collar/seat', b: 'block/barrel' };
    });
    const [short, long] = [placed(sliding, 'normal'), placed(sliding, 'long')];
    for (const one of [short, long]) expect(one.loops.every(({ closes }) => closes)).toBe(true);
    // Seen from the sensor, the plate and all on it goes forward with the block, by what the lens is longer.
    const z = (one: typeof short, ref: string) => one.places.get(ref)?.t[2] ?? Number.NaN;
    for (const ref of ['camera/plate', 'camera/block', 'camera/motor', 'camera/collar']) expect(z(long, ref) - z(short, ref)).toBeCloseTo(26, 3);
    expect(short.places.get('camera/body')).toEqual(IDENTITY);
  });

  test('a loop that cannot close says by how much and which range stops it', () => {
    const short = riggedShoot((draft) => {
      draft.builds.camera.joints['motor-on-rod'].settings.turnDeg = { auto: 'perLens', low: -90, high: -45 };
    });
    const { meshes, settings } = placed(short, 'normal');
    expect(meshes[0]?.gapMm).toBeGreaterThan(5);
    expect(settings.find(({ key }) => key === 'turnDeg')).toMatchObject({ atLimit: 'high' });
    // Where it would mesh: the angle found with a wide range.
    const wide = placed(riggedShoot(), 'normal').settings.find(({ key }) => key === 'turnDeg')?.value ?? Number.NaN;
    expect(meshes[0]?.stoppedBy.map(({ variable, wants }) => [variable.key, wants])).toEqual([['turnDeg', expect.closeTo(wide, 2)]]);
  });
});

test('a part at a point without a place is unplaced and says why; one that does not mate is placed, and says why it does not', () => {
  const odd = riggedShoot((draft) => {
    draft.kit.parts['taking-58'].points.mount.class = 'long 52 mm';
    delete draft.kit.parts.motor.points.clamp.at;
  });
  const { unplaced, places, model } = placed(odd, 'normal');
  const why = Object.fromEntries(unplaced.map((one) => [one.ref, one.why]));
  expect(model.tree.find(({ child }) => child === 'camera/lens')?.joint.fault).toBe('short 18 mm does not go with long 52 mm');
  expect(why['camera/motor']).toContain('place is not entered');
  expect(why['camera/monitor']).toContain('fixed to nothing yet');
  for (const { r, t } of places.values()) expect([...r, ...t].every(Number.isFinite)).toBe(true);
});

property.prop([fc.shuffledSubarray(['body-on-plate', 'rod-left', 'rod-right', 'motor-on-rod', 'mesh'], { minLength: 5 })])('the order of joints in the file is nothing', (order) => {
  const shuffled = riggedShoot((draft) => {
    draft.builds.camera.joints = Object.fromEntries(order.map((id) => [id, draft.builds.camera.joints[id]]));
  });
  const [a, b] = [placed(riggedShoot(), 'long'), placed(shuffled, 'long')];
  for (const [ref, { t }] of a.places) t.forEach((value, axis) => expect(b.places.get(ref)?.t[axis]).toBeCloseTo(value, 6));
});

property.prop([fc.double({ min: -180, max: 180, noNaN: true }), fc.double({ min: -200, max: 200, noNaN: true })])('moving the first joint moves all that hangs on it alike', (turnDeg, heightMm) => {
  const plain = placed(riggedShoot(), 'normal').places;
  const moved = placed(riggedShoot((draft) => Object.assign(draft.builds.camera.joints['body-on-plate'], { settings: { turnDeg, heightMm } })), 'normal').places;
  const apart = (places: typeof plain, one: string, other: string) => compose(inverse(places.get(one) as Transform), places.get(other) as Transform);
  const [before, after] = [apart(plain, 'camera/body', 'camera/focuser'), apart(moved, 'camera/body', 'camera/focuser')];
  after.t.forEach((value, axis) => expect(value).toBeCloseTo(before.t[axis] ?? Number.NaN, 6));
});

test('a joint’s settings act in its own frame: across, along its up, out; on rods along the rod', () => {
  expect(jointTransform('hole', { sideMm: 1, slideMm: 2, heightMm: 3 }).t).toEqual([1, 2, 3]);
  expect(jointTransform('rod', { sideMm: 1, slideMm: 2, heightMm: 3 }).t).toEqual([1, 3, 2]);
});
