import type { Ledger } from '../../shoot/ledger/Ledger.ts';
import { axisOf } from '../mates.ts';
import type { Placement, SolvedSetting } from '../placing/placeSetup.ts';
import { IDENTITY, type Vector, axis, compose, dot, scale } from '../placing/Transform.ts';
import type { SetupPiece } from '../setupPieces.ts';
import { worldHulls } from './worldSolids.ts';

/** Where a clamp is on its rod: nobody sees the middle of a rod, but its ends. */
export interface PlaceOnRod {
  readonly rod: SetupPiece;
  /** Which of its ends is measured from. */
  readonly end: 'end at camera left' | 'upper end' | 'front end';
  /** Which way from that end: "behind". */
  readonly way: string;
  /** To the middle of the clamp; less than zero: past the end. */
  readonly fromEndMm: number;
  /** How much further from that end it is for a slide longer by 1 mm. */
  readonly perSlideMm: 1 | -1;
}

/** By which way the rod runs. */
const ENDS: readonly (readonly [PlaceOnRod['end'], string])[] = [['end at camera left', 'in from'], ['upper end', 'below'], ['front end', 'behind']];
const STRAIGHT = 0.8;

/** `undefined` for a joint that is no clamp on a rod, where the rod's shape is not entered, or where it runs askew. */
export function placeOnRod(ledger: Ledger, { model, places, setup, glass }: Placement, { path, a, b }: SolvedSetting['joint']): PlaceOnRod | undefined {
  const held = [...model.tree, ...model.loops].find(({ joint }) => joint.path === path);
  if (held === undefined || (a.point.kind === 'rod') === (b.point.kind === 'rod')) return undefined;
  const onA = a.point.kind === 'rod';
  const [rod, clamp, clampFrame] = onA ? [a, b, held.frameB] : [b, a, held.frameA];
  const corners = [...worldHulls(ledger, setup, glass)].flatMap(([{ piece, coarse }, hull]) => (piece.ref === rod.ref && !coarse ? hull : []));
  const along = axis(compose(places.get(a.ref) ?? IDENTITY, held.frameA).r, axisOf(a.point.kind, 'slideMm'));
  const k = along.findIndex((one) => Math.abs(one) > STRAIGHT);
  const named = ENDS[k];
  if (corners.length === 0 || named === undefined) return undefined;
  const sense = (along[k] ?? 1) < 0 ? -1 : 1;
  const forward: Vector = scale(along, sense);
  const end = Math.max(...corners.map((corner) => dot(corner, forward)));
  const at = dot(compose(places.get(clamp.ref) ?? IDENTITY, clampFrame).t, forward);
  // A slide takes `b` along the axis as seen from `a`, or the other way where it is counted on `b`.
  const ahead = sense * (onA ? 1 : -1) * (held.turned.has('slideMm') ? -1 : 1);
  return { rod: rod.piece, end: named[0], way: named[1], fromEndMm: end - at, perSlideMm: ahead > 0 ? -1 : 1 };
}
