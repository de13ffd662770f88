import { stepsFrom } from '../../assembly/hold/stepsFrom.ts';
import { opticalPath } from '../../assembly/opticalPath.ts';
import { type RigJoint, rigJoints } from '../../assembly/placing/rigJoints.ts';
import { type SetupPiece, setupPieces } from '../../assembly/setupPieces.ts';
import { swap } from '../../standards/assumptions/swap.ts';
import type { Asking } from '../Asking.ts';
import { named } from '../named.ts';
import type { SetupGlass } from '../subjects.ts';
import { type ChangeStep, takes, toolOf } from './changeStep.ts';
import { type Gears, gearsApart, gearsTogether } from './gearSteps.ts';

/** The work on the front of a camera at a change, in the order of the hands. */
export interface GlassChange {
  /** The drive out of the way, then from the front backwards. */
  readonly off: readonly ChangeStep[];
  /** From the mount forwards. */
  readonly on: readonly ChangeStep[];
  /** The drive back in mesh, where it reaches. */
  readonly mesh: readonly ChangeStep[];
}

export function glassChange(asking: Asking, from: SetupGlass, to: SetupGlass): GlassChange {
  const [before, after] = [frontOf(asking, from), frontOf(asking, to)];
  const stays = (ref: string): boolean => before.pieces.has(ref) && before.pieces.get(ref)?.part.id === after.pieces.get(ref)?.part.id;
  const [off, on] = [workOn(before, after, stays), workOn(after, before, stays)];
  return {
    off: [...gearsApart(asking, from, (gears) => parts(off, gears)), ...hands(asking, before, off, 'off')],
    on: hands(asking, after, on, 'on'),
    mesh: gearsTogether(asking, to, (gears) => parts(on, gears)),
  };
}

/** What a glass puts on a camera. */
interface Front {
  readonly pieces: ReadonlyMap<string, SetupPiece>;
  readonly joints: readonly RigJoint[];
  readonly body: string | undefined;
  /** How far ahead of the body a piece is: its number in the stack; what hangs on one of the stack comes off just before it; the build −1. */
  readonly aheadOf: (ref: string) => number;
  /** What a piece of the stack sits on the one behind it by, or the first on the body: it holds while supports are opened. */
  readonly isSeat: (joint: RigJoint) => boolean;
}

function frontOf({ ledger }: Asking, { setup, glass }: SetupGlass): Front {
  const pieces = new Map([...setupPieces(ledger, setup, glass)].filter(([, { fromGlass }]) => fromGlass));
  const path = opticalPath(ledger, setup, glass);
  const [stack, body] = [path.stack.map(({ ref }) => ref), path.body?.ref];
  const { joints } = rigJoints(ledger, setup, glass);
  const neighbours = (ref: string): string[] => joints.filter(({ a, b }) => a.ref === ref || b.ref === ref).map(({ a, b }) => (a.ref === ref ? b.ref : a.ref));
  const aheadOf = (ref: string): number => {
    if (!pieces.has(ref)) return -1;
    return stack.includes(ref) ? stack.indexOf(ref) : Math.max(-1, ...neighbours(ref).map((one) => stack.indexOf(one))) + 0.5;
  };
  const isSeat = ({ a, b }: RigJoint): boolean => a.point.kind === 'lens mount' || [a, b].every(({ ref }) => ref === body || stack.includes(ref));
  return { pieces, joints, body, aheadOf, isSeat };
}

/** What is done to one front at a change. */
interface Work {
  /** Pieces that go or come. */
  readonly changing: readonly SetupPiece[];
  /** Pieces that stay in the set, but stand ahead of those: off and on again in one. */
  readonly aside: readonly SetupPiece[];
  /** What hangs on those alone, and goes aside with them. */
  readonly along: ReadonlySet<string>;
  readonly joints: readonly RigJoint[];
}

function workOn(own: Front, other: Front, stays: (ref: string) => boolean): Work {
  const changing = [...own.pieces.values()].filter(({ ref }) => !stays(ref));
  const rearmost = Math.min(...changing.map(({ ref }) => own.aheadOf(ref)));
  const aside = [...own.pieces.values()].filter(({ ref }) => stays(ref) && own.aheadOf(ref) > rearmost);
  const { held, along } = partedBy(own, new Set(aside.map(({ ref }) => ref)));
  const kept = new Set(other.joints.map(endsOf));
  const there = (ref: string) => !own.pieces.has(ref) || stays(ref);
  // Joints that the other glass does not have between the same two pieces at the same points.
  const goes = (joint: RigJoint): boolean =>
    (own.pieces.has(joint.a.ref) || own.pieces.has(joint.b.ref)) && !(kept.has(endsOf(joint)) && there(joint.a.ref) && there(joint.b.ref));
  return { changing, aside, along, joints: own.joints.filter((joint) => !joint.mesh && (goes(joint) || held.has(joint))) };
}

/** What still holds pieces that go aside to the camera, as a support or a collar on its rods; and what is held by them alone. */
function partedBy({ joints, body }: Front, aside: ReadonlySet<string>): { readonly held: ReadonlySet<RigJoint>; readonly along: ReadonlySet<string> } {
  const fixings = joints.filter(({ mesh }) => !mesh);
  const links = (of: (ref: string) => boolean) => fixings.filter(({ a, b }) => of(a.ref) && of(b.ref)).map(({ a, b }) => [a.ref, b.ref] as const);
  const camera = stepsFrom(body === undefined ? [] : [body], links((ref) => !aside.has(ref)));
  const held = new Set(fixings.filter(({ a, b }) => (aside.has(a.ref) && camera.has(b.ref)) || (aside.has(b.ref) && camera.has(a.ref))));
  return { held, along: new Set(stepsFrom([...aside], links((ref) => !camera.has(ref))).keys()) };
}

/** The two places that a joint holds together. */
export const endsOf = ({ a, b }: RigJoint): string => `${a.ref}/${a.pointId}|${b.ref}/${b.pointId}`;

/** Each piece after its joints are opened, or before they are closed: from the front backwards, or from the mount forwards. */
function hands(asking: Asking, { aheadOf, isSeat }: Front, { changing, aside, joints }: Work, way: 'off' | 'on'): ChangeStep[] {
  const time = takes(asking, swap.offMin);
  const items = [
    ...changing.map(({ ref, name }) => ({ ahead: aheadOf(ref), last: 2, step: { kind: way, says: `${way === 'off' ? 'take off' : 'put on'} ${named(name)}`, ...time } })),
    // The seat is the last to let go and the first to hold.
    ...joints.map((joint) => ({ ahead: Math.max(aheadOf(joint.a.ref), aheadOf(joint.b.ref)), last: isSeat(joint) ? 1 : 0, step: jointStep(asking, joint, way === 'off' ? 'open' : 'close') })),
    ...(aside.length === 0 ? [] : [{ ahead: Math.min(...aside.map(({ ref }) => aheadOf(ref))), last: 2, step: { kind: way, says: asideWords(aside, way), ...time } }]),
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

/** Gears that come apart at a change: of a ring that goes or is set aside, unless its drive goes along. */
function parts({ changing, aside, along }: Work, { ring, driver }: Gears): boolean {
  return [...changing, ...aside].some(({ ref }) => ref === ring.ref) && !along.has(driver.ref);
}
