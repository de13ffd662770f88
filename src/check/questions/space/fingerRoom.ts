import { rigJoints } from '../../../assembly/placing/rigJoints.ts';
import { placeSetup } from '../../../assembly/placing/placeSetup.ts';
import type { ModelJoint } from '../../../assembly/placing/rigModel.ts';
import { IDENTITY, type Vector, apply } from '../../../assembly/placing/Transform.ts';
import { type Body, bodies, boxAround, boxesMeet } from '../../../assembly/space/bodies.ts';
import type { Ledger } from '../../../shoot/ledger/Ledger.ts';
import { space } from '../../../standards/assumptions/space.ts';
import { origin } from '../../origin.ts';
import { lengthsMustBeThere } from '../../quantities/lengthsWanted.ts';
import { judgeRatio } from '../../judge.ts';
import { question } from '../../question.ts';
import { eachGlass, glassesOf } from '../../subjects.ts';

export const fingerRoom = question({
  id: 'space.fingerRoom',
  asks: 'Is there room for fingers at what a lens change opens?',
  kind: 'immediate',
  explains:
    'Every joint that a swap opens or resets (those of the glass, and those whose setting differs from lens to lens) is a knob, lever or screw that somebody turns, cold and in a hurry. Measured is the side of the largest cube round the joint that nothing stands in but the two pieces and what is fixed to them. Asked only where there is more than one lens to change.',
  sources: ['common practice; breadth of a gloved finger from memory'],
  subjects: (ledger) =>
    eachGlass(ledger).flatMap(({ setup, glass }) => (glassesOf(ledger, setup).length < 2 ? [] : openedBySwap(ledger, setup, glass).map(({ joint }) => ({ setup, glass, joint: joint.path })))),
  ask: (asking, { setup, glass, joint: path }) => {
    const opened = openedBySwap(asking.ledger, setup, glass).find(({ joint }) => joint.path === path);
    if (opened === undefined) return null;
    const { joint, frameB } = opened;
    const { places } = placeSetup(asking.ledger, setup, glass);
    const centre = apply(places.get(joint.b.ref) ?? IDENTITY, frameB.t);
    const near = neighboursOf(asking.ledger, setup, glass, [joint.a.ref, joint.b.ref]);
    const reach = boxAround(cubeAround(centre, MOST_ROOM_MM));
    const others = bodies(asking.ledger, setup, glass).filter(({ world: { piece, coarse }, box }) => !coarse && piece.build === joint.build && boxesMeet(box, reach) && !near.has(piece.ref));
    const { roomMm, by } = freeRoom(centre, others);
    const wanted = asking.assume(space.fingerRoomMm);
    if (2 * roomMm >= wanted.value) lengthsMustBeThere(asking.ledger, { setup, glass });
    return judgeRatio({
      needs: { amount: { value: wanted.value, unit: 'mm' }, from: `a gloved finger ${origin(wanted)}` },
      has: { amount: { value: 2 * roomMm, unit: 'mm' }, from: by === undefined ? 'nothing near' : `to ${by}` },
      says: {
        holds: `There is room at ${joint.b.piece.name} on ${joint.a.piece.name}.`,
        tight: `${by ?? 'Something'} is close to where ${joint.b.piece.name} comes off ${joint.a.piece.name}.`,
        fails: `${by ?? 'Something'} leaves no room for fingers where ${joint.b.piece.name} comes off ${joint.a.piece.name}.`,
      },
    });
  },
});

function openedBySwap(ledger: Ledger, setup: string, glass: string): ModelJoint[] {
  const { tree, loops } = placeSetup(ledger, setup, glass).model;
  return [...tree, ...loops].filter(({ joint }) => joint.a.point.kind !== 'surface' && joint.b.point.kind !== 'surface').filter(({ joint, variables }) => joint.path.startsWith('glasses/') || variables.some(({ scope }) => scope === 'perLens') || Object.values(joint.settings).some((setting) => typeof setting === 'object' && 'pinned' in setting));
}

/** The pieces of a joint and all that is fixed to either. */
function neighboursOf(ledger: Ledger, setup: string, glass: string, refs: readonly string[]): ReadonlySet<string> {
  const { joints } = rigJoints(ledger, setup, glass);
  return new Set([...refs, ...joints.filter(({ a, b }) => refs.includes(a.ref) || refs.includes(b.ref)).flatMap(({ a, b }) => [a.ref, b.ref])]);
}

const MOST_ROOM_MM = 60;

const cubeAround = (centre: Vector, half: number): Vector[] => [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].map((k): Vector => [centre[0] + i * half, centre[1] + j * half, centre[2] + k * half])));

/** Half the side of the largest cube round a place that no body stands in, by halving. */
function freeRoom(centre: Vector, others: readonly Body[]): { roomMm: number; by: string | undefined } {
  const inWay = (half: number) => {
    const cube = cubeAround(centre, half);
    const box = boxAround(cube);
    return others.find((body) => body.meets(cube, box))?.world.piece.name;
  };
  let by = inWay(MOST_ROOM_MM);
  if (by === undefined) return { roomMm: MOST_ROOM_MM, by };
  let [low, high] = [0, MOST_ROOM_MM];
  for (let step = 0; step < 8; step += 1) {
    const middle = (low + high) / 2;
    const found = inWay(middle);
    if (found === undefined) low = middle;
    else [high, by] = [middle, found];
  }
  return { roomMm: low, by };
}
