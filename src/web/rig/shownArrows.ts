import { Vector3 } from 'three';
import { type Arrow, arrowsOf, spanMm } from './arrows.ts';
import { seen, tipOf } from './forceArrows.ts';
import type { Shown } from './RigScene.ts';

/** A place on the canvas, in its pixels. */
export interface OnCanvas {
  readonly x: number;
  readonly y: number;
}

export interface ShownArrow {
  readonly key: string;
  readonly arrow: Arrow;
  readonly tip: Vector3;
}

/** The arrows that are drawn, with where they end. */
export function shownArrows({ forces, selected }: Pick<Shown, 'forces' | 'selected'>): ShownArrow[] {
  if (forces === undefined) return [];
  const arrows = arrowsOf(forces, selected);
  const strongestN = Math.max(...arrows.map(({ forceN }) => Math.hypot(...forceN)), 1e-9);
  return seen(arrows).map((arrow) => ({ key: arrow.key, arrow, tip: tipOf(arrow, spanMm(forces), strongestN) }));
}

/** As near to an arrow as one means it. */
const FINGER_PX = 7;

/** The arrow that passes under a place on the canvas, the nearest of several. */
export function arrowUnder(place: OnCanvas, arrows: readonly ShownArrow[], onCanvas: (at: Vector3) => OnCanvas): string | undefined {
  const near = arrows.map(({ key, arrow, tip }) => ({ key, px: fromStretch(place, onCanvas(new Vector3(...arrow.atMm)), onCanvas(tip)) }));
  return near.filter(({ px }) => px < FINGER_PX).toSorted((a, b) => a.px - b.px)[0]?.key;
}

/** How far a place is from a stretch between two others. */
function fromStretch({ x, y }: OnCanvas, a: OnCanvas, b: OnCanvas): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / Math.max(dx * dx + dy * dy, 1e-9)));
  return Math.hypot(x - a.x - share * dx, y - a.y - share * dy);
}
