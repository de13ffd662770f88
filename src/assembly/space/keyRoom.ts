import { SCREWED } from '../mates.ts';
import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { placeSetup } from '../placing/placeSetup.ts';
import type { ModelJoint } from '../placing/rigModel.ts';
import { IDENTITY, type Transform, type Vector, add, apply, rotate, scale } from '../placing/Transform.ts';
import { type Body, bodies, boxAround, boxesMeet } from './bodies.ts';

/** A key or driver wants this much room behind its screw. Common practice: a short key in two fingers. */
const KEY_LENGTH_MM = 60;
const KEY_RADIUS_MM = 5;

/** The pieces that stand, if they are on, where the key of a joint's screw has to go; by name. */
export type KeyRoom = (joint: ModelJoint) => readonly string[];

export function keyRoom(ledger: Ledger, setup: string, glass: string): KeyRoom {
  const { places } = placeSetup(ledger, setup, glass);
  const all = bodies(ledger, setup, glass);
  const known = new Map<ModelJoint, readonly string[]>();
  return (joint) => {
    const inWay = known.get(joint) ?? piecesInWay(joint, all, places);
    known.set(joint, inWay);
    return inWay;
  };
}

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
