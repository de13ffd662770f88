import { axisOf } from '../mates.ts';
import { settingsWith } from './chain.ts';
import type { Placement, SolvedSetting } from './placeSetup.ts';
import type { RigJoint } from './rigJoints.ts';
import type { ModelJoint, TreeStep } from './rigModel.ts';
import { IDENTITY, type Vector, axis, compose, scale, turnZ, multiply } from './Transform.ts';

/** How a joint is set anew, as one sees who does it. */
export interface MoveWay {
  readonly moves: RigJoint['a'];
  readonly on: RigJoint['a'];
  /** "forward", "clockwise seen from behind"; `undefined` where it runs askew. */
  readonly way: string | undefined;
}

/** Which of the two pieces of a joint goes which way when a setting grows by `by`: the one at `moving`, else what hangs further out moves on what it hangs on. */
export function moveWay({ model, places, values }: Placement, { joint: { path, a, b }, key }: Pick<SolvedSetting, 'joint' | 'key'>, by: number, moving?: string): MoveWay {
  const held: ModelJoint | TreeStep | undefined = [...model.tree, ...model.loops].find(({ joint }) => joint.path === path);
  const back = moving === undefined ? held !== undefined && 'flipped' in held && held.flipped : moving === a.ref;
  const [moves, on] = back ? [a, b] : [b, a];
  if (held === undefined) return { moves, on, way: undefined };
  const { r } = compose(places.get(a.ref) ?? IDENTITY, held.frameA);
  // Seen from `a` a setting moves or turns `b`; what is counted on `b` runs the other way, and so does `a` seen from `b`.
  const sense = Math.sign(by) * (held.turned.has(key) ? -1 : 1) * (back ? -1 : 1);
  if (key === 'turnDeg') return { moves, on, way: wordOf(scale(axis(r, 2), sense), TURNS) };
  if (key === 'tiltDeg') return { moves, on, way: wordOf(scale(axis(multiply(r, turnZ(settingsWith(held, values).turnDeg ?? 0)), 0), sense), TURNS) };
  return { moves, on, way: wordOf(scale(axis(r, axisOf(a.point.kind, key)), sense), SHIFTS) };
}

type Words = readonly (readonly [more: string, less: string])[];

/** To camera left, up, ahead. */
const SHIFTS: Words = [['to camera left', 'to camera right'], ['up', 'down'], ['forward', 'back']];
/** Anticlockwise about an axis as seen from its tip. */
const TURNS: Words = [
  ['anticlockwise seen from camera left', 'clockwise seen from camera left'], ['anticlockwise seen from above', 'clockwise seen from above'], ['clockwise seen from behind', 'anticlockwise seen from behind'],
];

/** Within 37° of an axis of the camera it is called by it. */
const ALIGNED = 0.8;

function wordOf(way: Vector, words: Words): string | undefined {
  const at = way.findIndex((one) => Math.abs(one) > ALIGNED);
  return at === -1 ? undefined : words[at]?.[(way[at] ?? 0) > 0 ? 0 : 1];
}
