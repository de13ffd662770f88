import type { ModelJoint, RigModel } from '../placing/rigModel.ts';
import type { KeyRoom } from './keyRoom.ts';
import type { AssemblyStep } from './orderOfAssembly.ts';

export interface TakenApart {
  /** The last that comes off first. */
  readonly steps: readonly AssemblyStep[];
  /** Whether each came off with its screws within reach. */
  readonly free: boolean;
}

/**
 * Piece by piece off the root: always the first by name whose screws are free and which carries nothing else; turned round, an order in which
 * a screw that something covers is turned before the cover goes on.
 */
export function takenApart(model: RigModel, refs: Iterable<string>, keyRoom: KeyRoom): TakenApart {
  const fixings = fixingsOf(model);
  const there = new Set([...model.roots, ...refs]);
  const blocked = (joint: ModelJoint): boolean => keyRoom(joint).some((ref) => there.has(ref));
  // How many pieces that are still on hang by the tree on each.
  const carries = new Map<string, number>();
  for (const { parent } of model.tree) carries.set(parent, (carries.get(parent) ?? 0) + 1);
  const loose = [...there].filter((ref) => !carries.has(ref) && !model.roots.includes(ref)).toSorted();
  const off: AssemblyStep[] = [];
  let free = true;
  while (loose.length > 0) {
    const at = loose.findIndex((ref) => !fixings(ref, there).some(blocked));
    free &&= at >= 0;
    const [next] = loose.splice(Math.max(0, at), 1) as [string];
    off.push({ ref: next, joints: fixings(next, there) });
    there.delete(next);
    const parent = model.stepTo.get(next)?.parent;
    if (parent === undefined) continue;
    const still = (carries.get(parent) ?? 0) - 1;
    carries.set(parent, still);
    if (still === 0 && !model.roots.includes(parent)) loose.splice(placeIn(loose, parent), 0, parent);
  }
  return { steps: [...model.roots.map((ref) => ({ ref, joints: [] })), ...off.toReversed()], free };
}

/** Where a name belongs among sorted names. */
function placeIn(sorted: readonly string[], name: string): number {
  const at = sorted.findIndex((one) => one > name);
  return at < 0 ? sorted.length : at;
}

/** What joins a piece to those that are there. */
function fixingsOf(model: RigModel): (ref: string, there: ReadonlySet<string>) => ModelJoint[] {
  const around = new Map<string, { readonly by: ModelJoint; readonly other: string }[]>();
  const note = (ref: string, other: string, by: ModelJoint): void => {
    const own = around.get(ref);
    if (own === undefined) around.set(ref, [{ by, other }]);
    else own.push({ by, other });
  };
  for (const by of [...model.tree, ...model.loops, ...model.meshes]) {
    const { a, b } = by.joint;
    note(a.ref, b.ref, by);
    if (a.ref !== b.ref) note(b.ref, a.ref, by);
  }
  return (ref, there) => (around.get(ref) ?? []).flatMap(({ by, other }) => (there.has(other) ? [by] : []));
}
