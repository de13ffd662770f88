import type { ModelJoint, RigModel } from '../placing/rigModel.ts';
import { type Link, Undoing } from './Undoing.ts';
import type { KeyRoom } from './keyRoom.ts';
import type { AssemblyOrder, AssemblyStep, BlockedScrew } from './orderOfAssembly.ts';

/**
 * The rig taken apart from all sides at once: every screw that a key reaches is undone, and what still hangs together by covered ones is taken
 * apart by itself, where fewer pieces stand in the way. As taking away never covers a screw, the order of undoing is nothing, and what is left
 * together at last no order takes apart. Turned round: the smallest lumps first, each put together apart, then joined.
 */
export function subAssemblies(model: RigModel, usual: readonly AssemblyStep[], keyRoom: KeyRoom): AssemblyOrder {
  const refs = usual.map(({ ref }) => ref);
  const at = new Map(refs.map((ref, index) => [ref, index]));
  const links = [...model.tree, ...model.loops, ...model.meshes].flatMap((by): Held[] => {
    const [a, b] = [at.get(by.joint.a.ref), at.get(by.joint.b.ref)];
    return a === undefined || b === undefined || a === b ? [] : [{ by, a, b, inWay: keyRoom(by).flatMap((ref) => at.get(ref) ?? []) }];
  });
  const rig: Rig = { refs, undoing: new Undoing(refs.length, links), blocked: [] };
  const steps = rig.undoing.whole().flatMap((pieces) => putTogether(rig, pieces));
  return { steps, blocked: rig.blocked };
}

interface Held extends Link {
  readonly by: ModelJoint;
}

interface Rig {
  /** By their place in the usual order. */
  readonly refs: readonly string[];
  readonly undoing: Undoing<Held>;
  readonly blocked: BlockedScrew[];
}

/** The steps that put a lump together, from what comes apart last outwards; what does not come apart is noted, and goes by the usual order. */
function putTogether(rig: Rig, pieces: readonly number[]): AssemblyStep[] {
  const { rounds, left } = rig.undoing.apart(pieces);
  const built = new Set(left);
  const first = left.length === 1 ? [{ ref: rig.refs[left[0] as number] as string, joints: [] }] : stuck(rig, left);
  return [...first, ...rounds.toReversed().flatMap((lumps) => joined(rig, lumps, built))];
}

/** Lump after lump goes on what is built: always the first by the usual order of those that are fixed to it. */
function joined(rig: Rig, lumps: readonly (readonly number[])[], built: Set<number>): AssemblyStep[] {
  const lumpOf = new Map(lumps.flatMap((lump) => lump.map((piece) => [piece, lump] as const)));
  const waiting = new Set(lumps);
  const ready = new Set(lumps.filter((lump) => lump.some((piece) => around(rig, piece).some(({ other }) => built.has(other)))));
  const steps: AssemblyStep[] = [];
  while (ready.size > 0) {
    const next = [...ready].reduce((first, one) => ((one[0] as number) < (first[0] as number) ? one : first));
    ready.delete(next);
    waiting.delete(next);
    steps.push(...goesOn(rig, next, built));
    for (const piece of next) built.add(piece);
    for (const { other } of next.flatMap((piece) => around(rig, piece))) {
      const beside = lumpOf.get(other);
      if (beside !== undefined && waiting.has(beside)) ready.add(beside);
    }
  }
  return steps;
}

/** The fixings of a piece: a gear in mesh holds nothing. */
const around = ({ undoing }: Rig, piece: number): { readonly other: number }[] =>
  (undoing.around[piece] ?? []).flatMap(({ a, b, by }) => (by.joint.mesh ? [] : [{ other: a === piece ? b : a }]));

function goesOn(rig: Rig, lump: readonly number[], built: ReadonlySet<number>): AssemblyStep[] {
  const { refs, undoing } = rig;
  const crossing = lump.flatMap((piece) => (undoing.around[piece] ?? []).filter(({ a, b }) => built.has(a === piece ? b : a)));
  const joints = crossing.map(({ by }) => by);
  if (lump.length === 1) return [{ ref: refs[lump[0] as number] as string, joints }];
  const lead = lump.find((piece) => crossing.some(({ a, b, by }) => !by.joint.mesh && (a === piece || b === piece))) ?? (lump[0] as number);
  const [first, ...more] = putTogether(rig, lump) as [AssemblyStep, ...AssemblyStep[]];
  return [{ ...first, apart: true }, ...more, { ref: refs[lead] as string, joints, along: lump.filter((piece) => piece !== lead).map((piece) => refs[piece] as string) }];
}

/** Covered whichever way: what hangs on what, in the usual order. */
function stuck({ refs, undoing, blocked }: Rig, pieces: readonly number[]): AssemblyStep[] {
  const there = new Set<number>();
  return pieces.map((piece) => {
    const links = (undoing.around[piece] ?? []).filter(({ a, b }) => there.has(a === piece ? b : a));
    there.add(piece);
    for (const link of links) {
      const by = undoing.coveredBy(link);
      if (by !== undefined) blocked.push({ joint: link.by, by: refs[by] as string });
    }
    return { ref: refs[piece] as string, joints: links.map(({ by }) => by) };
  });
}
