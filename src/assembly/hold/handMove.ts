import { type MoveWay, moveWay } from '../placing/moveWay.ts';
import type { Placement, SolvedSetting } from '../placing/placeSetup.ts';
import type { JointEnd, RigJoint } from '../placing/rigJoints.ts';
import { carriedOn } from './carriedOn.ts';

/** Which piece hands move, and which way, to set a joint anew by `by`: what stands on the ground stays, and so does glass in its mount. */
export function handMove(placement: Placement, setting: Pick<SolvedSetting, 'joint' | 'key'>, by: number): MoveWay {
  const { joint, key } = setting;
  const moves = movedEnd(placement, joint);
  if (moves === undefined) return moveWay(placement, setting, by);
  const on = moves === joint.a ? joint.b : joint.a;
  // A support stays on its rods as it grows: what goes up is its top, with the glass.
  const goes = key === 'heightMm' && on.piece.fromGlass ? on : moves;
  return { moves, on, way: moveWay(placement, setting, by, goes.ref).way };
}

/** `undefined` of two pieces of the glass: the one further out. */
function movedEnd({ setup, glass }: Placement, joint: RigJoint): JointEnd | undefined {
  const { a, b } = joint;
  if (a.piece.fromGlass && b.piece.fromGlass) return undefined;
  if (a.piece.fromGlass || b.piece.fromGlass) return a.piece.fromGlass ? b : a;
  return carriedOn(a.piece.part.ledger, setup, glass, joint).carried;
}
