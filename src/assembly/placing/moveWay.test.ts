import { expect, test } from 'vitest';
import { riggedShoot } from '../../../test/riggedShoot.ts';
import { Ledger } from '../../shoot/ledger/Ledger.ts';
import { moveWay } from './moveWay.ts';
import { placeSetup } from './placeSetup.ts';
import { type Transform, multiply, subtract, transpose, turnVector } from './Transform.ts';

const JOINT = 'motor-on-rod';

/** The rig with its motor set by hand, its joint written either way round. */
const placed = (settings: Readonly<Record<string, number>>, swapped: boolean) =>
  placeSetup(new Ledger(riggedShoot((draft) => {
    const { a, b } = draft.builds.camera.joints[JOINT];
    // Else the gears would be brought to meet.
    delete draft.builds.camera.joints.mesh;
    draft.builds.camera.joints[JOINT] = { ...(swapped ? { a: b, b: a } : { a, b }), settings };
  })), 'sticks', 'normal');
const motorOf = ({ places }: ReturnType<typeof placed>): Transform => places.get('camera/motor') as Transform;

test.each([false, true])('the word says where the motor goes and how it turns, whichever end is written first (%s)', (swapped) => {
  const [before, slid, turned] = [{ slideMm: 100, turnDeg: 10 }, { slideMm: 112, turnDeg: 10 }, { slideMm: 100, turnDeg: 25 }].map((settings) => placed(settings, swapped)) as [ReturnType<typeof placed>, ReturnType<typeof placed>, ReturnType<typeof placed>];
  const { joint } = [...before.model.tree].find((step) => step.joint.path.endsWith(JOINT)) ?? {};
  if (joint === undefined) throw new Error('The motor hangs on nothing.');
  const [, , ahead] = subtract(motorOf(slid).t, motorOf(before).t);
  expect(Math.abs(ahead)).toBeCloseTo(12, 6);
  const word = moveWay(before, { joint, key: 'slideMm' }, 12);
  expect(word).toMatchObject({ way: ahead > 0 ? 'forward' : 'back', moves: { piece: { name: 'Motor on a clamp' } } });
  // Anticlockwise as seen from ahead, where the axis points, is clockwise from behind.
  const [, , about] = turnVector(multiply(motorOf(turned).r, transpose(motorOf(before).r)));
  expect(Math.abs(about)).toBeCloseTo((15 * Math.PI) / 180, 6);
  expect(moveWay(before, { joint, key: 'turnDeg' }, 15).way).toBe(`${about > 0 ? 'clockwise' : 'anticlockwise'} seen from behind`);
  expect(moveWay(before, { joint, key: 'turnDeg' }, -15).way).toBe(`${about > 0 ? 'anticlockwise' : 'clockwise'} seen from behind`);
});
