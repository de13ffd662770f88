import { type WorldSolid, convexParts } from '../../assembly/space/worldSolids.ts';
import type { Vector } from '../../assembly/placing/Transform.ts';
import type { Mark } from '../ink/Mark.ts';
import { type XY, polygon } from '../ink/path.ts';

export const VIEWS = ['left', 'front', 'top'] as const;
export type View = (typeof VIEWS)[number];
export const VIEW_NAMES: Readonly<Record<View, string>> = { left: 'from camera left', front: 'from the subject', top: 'from above' };

/** Across the page, down the page, and towards the eye. */
const AXES: Readonly<Record<View, (at: Vector) => readonly [number, number, number]>> = {
  left: ([x, y, z]) => [-z, -y, x],
  front: ([x, y, z]) => [x, -y, z],
  top: ([x, y, z]) => [-z, x, y],
};

/** The outline of a solid in a view, and how near it is. */
interface Outline {
  readonly ref: string;
  readonly corners: readonly XY[];
  readonly near: number;
  readonly far: number;
  readonly coarse: boolean;
  readonly box: Box;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface RigView {
  readonly outlines: readonly Outline[];
  readonly box: Box;
}

/** A rig as outlines, the farthest first, so that what is nearer covers what is behind it. */
export function rigView(solids: readonly WorldSolid[], view: View): RigView {
  const outlines = solids.map((solid): Outline => {
    const seen = convexParts(solid).flat().map(AXES[view]);
    const corners = hull(seen.map(([x, y]) => ({ x, y })));
    const depths = seen.map(([, , depth]) => depth);
    return { ref: solid.piece.ref, corners, near: Math.max(...depths), far: Math.min(...depths), coarse: solid.coarse, box: boxOf(corners) };
  });
  return { outlines: backToFront(outlines), box: boxOf(outlines.flatMap(({ corners }) => corners)) };
}

const boxOf = (corners: readonly XY[]): Box => ({
  left: Math.min(...corners.map(({ x }) => x)), right: Math.max(...corners.map(({ x }) => x)), top: Math.min(...corners.map(({ y }) => y)), bottom: Math.max(...corners.map(({ y }) => y)),
});

/** The convex hull of points (Andrew's monotone chain). */
function hull(points: readonly XY[]): XY[] {
  const sorted = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  const half = (some: readonly XY[]): XY[] => {
    const chain: XY[] = [];
    for (const point of some) {
      while (chain.length >= 2 && turn(chain.at(-2) as XY, chain.at(-1) as XY, point) <= 1e-9) chain.pop();
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

const turn = (a: XY, b: XY, c: XY): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** What lies wholly behind another goes first; what is neither goes by its middle. */
function backToFront(outlines: readonly Outline[]): Outline[] {
  const sorted = outlines.toSorted((a, b) => a.near + a.far - b.near - b.far || (a.ref < b.ref ? -1 : 1));
  const behind = sorted.map((one) => new Set(sorted.filter((other) => other !== one && other.near <= one.far + 1e-6 && meet(other.box, one.box) && other.near < one.near)));
  const drawn = new Set<Outline>();
  const order: Outline[] = [];
  while (order.length < sorted.length) {
    const at = sorted.findIndex((one, index) => !drawn.has(one) && [...(behind[index] ?? [])].every((other) => drawn.has(other)));
    const next = sorted[at === -1 ? sorted.findIndex((one) => !drawn.has(one)) : at] as Outline;
    drawn.add(next);
    order.push(next);
  }
  return order;
}

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** A view drawn into a place on the page; of pieces that are `shown` only, those in `fresh` standing out. */
export function drawView({ outlines }: RigView, { shown, fresh, box, x, y, scale }: { shown?: ReadonlySet<string>; fresh?: ReadonlySet<string>; box: Box; x: number; y: number; scale: number }): Mark[] {
  return outlines.filter(({ ref }) => shown?.has(ref) ?? true).map(({ ref, corners, coarse }): Mark => {
    const isNew = fresh?.has(ref) ?? false;
    return {
      kind: 'path', d: polygon(corners.map((at) => ({ x: x + (at.x - box.left) * scale, y: y + (at.y - box.top) * scale }))), fill: isNew ? 0.8 : 1,
      stroke: { widthMm: isNew ? 0.45 : 0.16, ...(coarse ? { dash: [1, 0.8] } : {}) },
    };
  });
}

/** The middle of a piece in a view, mm of the rig. */
export function middleOf({ outlines }: RigView, ref: string): XY | undefined {
  const own = outlines.filter((one) => one.ref === ref).flatMap(({ corners }) => corners);
  if (own.length === 0) return undefined;
  const box = boxOf(own);
  return { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
}

const ACROSS = 12;

/** Places in a view at which a piece is what is seen, those nearest its middle first; none where others cover it. */
export function seenSpots({ outlines }: RigView, ref: string): XY[] {
  const middle = middleOf({ outlines, box: NOWHERE }, ref);
  if (middle === undefined) return [];
  const grid = outlines.filter((one) => one.ref === ref).flatMap(({ box }) => inside(box));
  const away = ({ x, y }: XY): number => Math.hypot(x - middle.x, y - middle.y);
  return grid.filter((at) => outlines.findLast(({ corners }) => holds(corners, at))?.ref === ref).toSorted((a, b) => away(a) - away(b));
}

const NOWHERE: Box = { left: 0, right: 0, top: 0, bottom: 0 };

/** Places spread evenly over a box, its middle among them. */
function inside({ left, right, top, bottom }: Box): XY[] {
  const shares = Array.from({ length: ACROSS - 1 }, (_, at) => (at + 1) / ACROSS);
  return shares.flatMap((across) => shares.map((down) => ({ x: left + (right - left) * across, y: top + (bottom - top) * down })));
}

/** Whether a convex outline has a place in it. */
const holds = (corners: readonly XY[], at: XY): boolean => corners.every((corner, index) => turn(corner, corners[(index + 1) % corners.length] ?? corner, at) >= 0);
