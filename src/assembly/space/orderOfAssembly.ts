import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { ModelJoint, RigModel } from '../placing/rigModel.ts';
import { IDENTITY, type Transform, type Vector, add, apply, rotate, scale } from '../placing/Transform.ts';
import { type Body, bodies, boxAround, boxesMeet } from './bodies.ts';

/** One step: a piece goes on, and the joints that fix it to what is there already. */
export interface AssemblyStep {
  readonly ref: string;
  readonly joints: readonly ModelJoint[];
}

export interface AssemblyOrder {
  readonly steps: readonly AssemblyStep[];
  /** Screws that cannot be reached in any order found: the joint, and the piece in the way of its key. */
  readonly blocked: readonly { readonly joint: ModelJoint; readonly by: string }[];
}

/** A key or driver wants this much room behind its screw. Common practice: a short key in two fingers. */
const KEY_LENGTH_MM = 60;
const KEY_RADIUS_MM = 5;
const SCREWED = new Set(['thread', 'hole', 'stud', 'tripod plate']);

/**
 * An order in which every piece can go on: taken apart from the end, where always the first piece by name comes off whose screws are
 * free and which carries nothing else; turned round. A screw that something covers is turned before the cover goes on.
 */
export function orderOfAssembly(ledger: Ledger, setup: string, glass: string): AssemblyOrder {
  return ledger.cell(`order of assembly|${setup}|${glass}`, () => {
    const { model, places } = placeSetup(ledger, setup, glass);
    const { off, blocked } = takenApart(model, places, keyBlocker(ledger, setup, glass, places));
    return { steps: [...model.roots.map((ref) => ({ ref, joints: [] })), ...off.toReversed()], blocked };
  });
}

type KeyBlocked = (joint: ModelJoint, there: ReadonlySet<string>) => string | undefined;

function takenApart(model: RigModel, places: ReadonlyMap<string, Transform>, keyBlocked: KeyBlocked): { readonly off: readonly AssemblyStep[]; readonly blocked: AssemblyOrder['blocked'] } {
  const fixings = fixingsOf(model);
  const there = new Set([...model.roots, ...places.keys()]);
  // How many pieces that are still on hang by the tree on each.
  const carries = new Map<string, number>();
  for (const { parent } of model.tree) carries.set(parent, (carries.get(parent) ?? 0) + 1);
  const loose = [...places.keys()].filter((ref) => !carries.has(ref) && !model.roots.includes(ref)).toSorted();
  const off: AssemblyStep[] = [];
  const blocked: { joint: ModelJoint; by: string }[] = [];
  while (loose.length > 0) {
    const free = loose.findIndex((ref) => fixings(ref, there).every((joint) => keyBlocked(joint, there) === undefined));
    const [next] = loose.splice(Math.max(0, free), 1) as [string];
    const joints = fixings(next, there);
    if (free < 0) {
      for (const joint of joints) {
        const by = keyBlocked(joint, there);
        if (by !== undefined) blocked.push({ joint, by });
      }
    }
    off.push({ ref: next, joints });
    there.delete(next);
    const parent = model.stepTo.get(next)?.parent;
    if (parent === undefined) continue;
    const still = (carries.get(parent) ?? 0) - 1;
    carries.set(parent, still);
    if (still === 0 && !model.roots.includes(parent)) loose.splice(placeIn(loose, parent), 0, parent);
  }
  return { off, blocked };
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

/** Finds the piece that stands where the key of a joint's screw has to go, among those that are there. */
function keyBlocker(ledger: Ledger, setup: string, glass: string, places: ReadonlyMap<string, Transform>): KeyBlocked {
  const all = bodies(ledger, setup, glass);
  const known = new Map<ModelJoint, readonly string[]>();
  return (joint, there) => {
    const inWay = known.get(joint) ?? piecesInWay(joint, all, places);
    known.set(joint, inWay);
    return inWay.find((ref) => there.has(ref));
  };
}

/** The pieces that stand, if they are on, where the key of a joint's screw has to go. */
function piecesInWay({ joint, frameA, frameB }: ModelJoint, all: readonly Body[], places: ReadonlyMap<string, Transform>): string[] {
  const screw = [{ end: joint.a, frame: frameA }, { end: joint.b, frame: frameB }].find(({ end }) => SCREWED.has(end.point.kind) && end.point.sex === 'male' && end.point.tool !== 'hand');
  if (screw === undefined || joint.mesh) return [];
  const stand = places.get(screw.end.ref) ?? IDENTITY;
  const head = apply(stand, screw.frame.t);
  const away = scale(rotate(stand.r, [screw.frame.r[2], screw.frame.r[5], screw.frame.r[8]]), -1);
  const thickness = throughPart(all.filter(({ world }) => world.piece.ref === screw.end.ref).map(({ hull }) => hull), head, away);
  const key = rod(add(head, scale(away, thickness + 1)), away);
  const box = boxAround(key);
  const near = all.filter((body) => boxesMeet(body.box, box) && body.world.piece.build === joint.build && body.world.piece.ref !== joint.a.ref && body.world.piece.ref !== joint.b.ref);
  return [...new Set(near.filter((body) => body.meets(key, box)).map(({ world }) => world.piece.ref))].toSorted();
}

/** How far the screw's own part reaches behind its face: the head sits at its far side. */
function throughPart(parts: readonly (readonly Vector[])[], head: Vector, away: Vector): number {
  const reach = parts.flat().map((corner) => (corner[0] - head[0]) * away[0] + (corner[1] - head[1]) * away[1] + (corner[2] - head[2]) * away[2]);
  return Math.max(0, ...reach);
}

/** Corners of the room a key takes. */
function rod(from: Vector, along: Vector): Vector[] {
  const across: Vector = Math.abs(along[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const u: Vector = [along[1] * across[2] - along[2] * across[1], along[2] * across[0] - along[0] * across[2], along[0] * across[1] - along[1] * across[0]];
  const v: Vector = [along[1] * u[2] - along[2] * u[1], along[2] * u[0] - along[0] * u[2], along[0] * u[1] - along[1] * u[0]];
  return [0, KEY_LENGTH_MM].flatMap((distance) =>
    [[1, 0], [0, 1], [-1, 0], [0, -1]].map(([a = 0, b = 0]) => add(add(from, scale(along, distance)), add(scale(u, a * KEY_RADIUS_MM), scale(v, b * KEY_RADIUS_MM)))),
  );
}
