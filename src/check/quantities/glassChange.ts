import { opticalPath } from '../../assembly/opticalPath.ts';
import { placeSetup } from '../../assembly/placing/placeSetup.ts';
import { type RigJoint, rigJoints } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, takes, toolOf } from './changeStep.ts';

/** The work on the front of a camera at a change, in the order of the hands. */
export interface GlassChange {
  /** The drive out of the way, then from the front backwards. */
  readonly off: readonly ChangeStep[];
  /** From the mount forwards. */
  readonly on: readonly ChangeStep[];
  /** The drive back in mesh. */
  readonly mesh: readonly ChangeStep[];
}

export function glassChange(asking: Asking, from: SetupGlass, to: SetupGlass): GlassChange {
  const [before, after] = [frontOf(asking, from), frontOf(asking, to)];
  const stays = (ref: string): boolean => before.pieces.has(ref) && before.pieces.get(ref)?.part.id === after.pieces.get(ref)?.part.id;
  const [off, on] = [workOn(before, after, stays), workOn(after, before, stays)];
  return {
    off: [...meshes(asking, before, off).map(({ ring, driver, tool }): ChangeStep => ({ kind: 'mesh', says: `swing ${driver} clear of ${ring}`, tool, ...takes(asking, swap.handMin) })), ...hands(asking, before, off, 'off')],
    on: hands(asking, after, on, 'on'),
    mesh: meshes(asking, after, on).map(({ ring, driver, tool }) => ({ kind: 'mesh', says: `bring ${driver} into mesh with ${ring}`, tool, ...takes(asking, swap.handMin) })),
  };
}

/** What a glass puts on a camera. */
interface Front {
  readonly subject: SetupGlass;
  readonly pieces: ReadonlyMap<string, SetupPiece>;
  readonly joints: readonly RigJoint[];
  /** How far ahead of the body a piece is: its number in the stack; what hangs on one of the stack comes off just before it; the build −1. */
  readonly aheadOf: (ref: string) => number;
}

function frontOf({ ledger }: Asking, subject: SetupGlass): Front {
  const { setup, glass } = subject;
  const pieces = new Map([...setupPieces(ledger, setup, glass)].filter(([, { fromGlass }]) => fromGlass));
  const stack = opticalPath(ledger, setup, glass).stack.map(({ ref }) => ref);
  const { joints } = rigJoints(ledger, setup, glass);
  const neighbours = (ref: string): string[] => joints.filter(({ a, b }) => a.ref === ref || b.ref === ref).map(({ a, b }) => (a.ref === ref ? b.ref : a.ref));
  const aheadOf = (ref: string): number => {
    if (!pieces.has(ref)) return -1;
    return stack.includes(ref) ? stack.indexOf(ref) : Math.max(-1, ...neighbours(ref).map((one) => stack.indexOf(one))) + 0.5;
  };
  return { subject, pieces, joints, aheadOf };
}

/** What is done to one front at a change. */
interface Work {
  /** Pieces that go or come. */
  readonly changing: readonly SetupPiece[];
  /** Pieces that stay in the set, but stand ahead of those: off and on again in one. */
  readonly aside: readonly SetupPiece[];
  readonly joints: readonly RigJoint[];
}

function workOn(own: Front, other: Front, stays: (ref: string) => boolean): Work {
  const changing = [...own.pieces.values()].filter(({ ref }) => !stays(ref));
  const rearmost = Math.min(...changing.map(({ ref }) => own.aheadOf(ref)));
  const kept = new Set(other.joints.map(endsOf));
  const there = (ref: string) => !own.pieces.has(ref) || stays(ref);
  return {
    changing, aside: [...own.pieces.values()].filter(({ ref }) => stays(ref) && own.aheadOf(ref) > rearmost),
    // Joints that the other glass does not have between the same two pieces at the same points.
    joints: own.joints.filter((joint) => !joint.mesh && (own.pieces.has(joint.a.ref) || own.pieces.has(joint.b.ref)) && !(kept.has(endsOf(joint)) && there(joint.a.ref) && there(joint.b.ref))),
  };
}

/** The two places that a joint holds together. */
export const endsOf = ({ a, b }: RigJoint): string => `${a.ref}/${a.pointId}|${b.ref}/${b.pointId}`;

/** Each piece after its joints are opened, or before they are closed: from the front backwards, or from the mount forwards. */
function hands(asking: Asking, { aheadOf }: Front, { changing, aside, joints }: Work, way: 'off' | 'on'): ChangeStep[] {
  const time = takes(asking, swap.offMin);
  const items = [
    ...changing.map(({ ref, name }) => ({ ahead: aheadOf(ref), last: 1, step: { kind: way, says: `${way === 'off' ? 'take off' : 'put on'} ${named(name)}`, ...time } })),
    ...joints.map((joint) => ({ ahead: Math.max(aheadOf(joint.a.ref), aheadOf(joint.b.ref)), last: 0, step: jointStep(asking, joint, way === 'off' ? 'open' : 'close') })),
    ...(aside.length === 0 ? [] : [{ ahead: Math.min(...aside.map(({ ref }) => aheadOf(ref))), last: 1, step: { kind: way, says: asideWords(aside, way), ...time } }]),
  ];
  const backwards = items.toSorted((a, b) => b.ahead - a.ahead || a.last - b.last);
  return (way === 'off' ? backwards : backwards.toReversed()).map(({ step }) => step);
}

function asideWords(aside: readonly SetupPiece[], way: 'off' | 'on'): string {
  const names = aside.map(({ name }) => named(name)).join(' and ');
  return way === 'off' ? `set ${names} aside${aside.length > 1 ? ', still together' : ''}` : `put ${names} back on`;
}

function jointStep(asking: Asking, { a, b }: RigJoint, kind: 'open' | 'close'): ChangeStep {
  const tool = toolOf(a, b);
  return { kind, says: kind === 'open' ? `open ${named(b.piece.name)} from ${named(a.piece.name)}` : `fix ${named(b.piece.name)} to ${named(a.piece.name)}`, tool, ...takes(asking, tool === 'hand' ? swap.handMin : swap.keyMin) };
}

interface Mesh {
  readonly ring: string;
  readonly driver: string;
  readonly tool: string;
}

/** Gears that come apart at a change: of a ring that goes or is set aside, unless its drive rides along. */
function meshes({ ledger }: Asking, { subject: { setup, glass }, joints }: Front, { changing, aside }: Work): Mesh[] {
  const moved = new Set([...changing, ...aside].map(({ ref }) => ref));
  const parentOf = new Map(placeSetup(ledger, setup, glass).model.tree.map(({ child, parent }) => [child, parent]));
  const rides = (ref: string | undefined): boolean => ref !== undefined && (aside.some((one) => one.ref === ref) || rides(parentOf.get(ref)));
  return joints.filter(({ mesh }) => mesh).flatMap(({ a, b }): Mesh[] => {
    const [ring, driver] = a.piece.part.has('focus') ? [a, b] : [b, a];
    return !moved.has(ring.ref) || rides(driver.ref) ? [] : [{ ring: named(ring.piece.name), driver: named(driver.piece.name), tool: toolOf(driver) }];
  });
}
