import type { Place } from '../../shoot/schema/basics.ts';
import type { Solid } from '../../shoot/schema/mechanics.ts';
import { shapeOf } from '../coarseShape.ts';
import { pointFrame } from './jointFrame.ts';
import type { JointEnd } from './rigJoints.ts';
import { type Vector, axis } from './Transform.ts';

type Range = readonly [number, number];

/** How far from one point, across and along, the point of what touches it may lie. */
export interface TouchRange {
  readonly side: Range;
  readonly slide: Range;
}

/** Without a face, what touches does so round about its point. Common practice: half the length of a roller or a yoke. */
const ROUND_ABOUT_MM = 15;

/** A face reaches as far as the point may slide, else as far as the solid it lies on; both faces may reach. */
export function touchRange(a: JointEnd, b: JointEnd): TouchRange {
  const [own, other] = [faceOf(a), faceOf(b)];
  // Face to face, what is across looks the other way, what is along does not.
  return {
    side: [own.side[0] + other.side[0], own.side[1] + other.side[1]],
    slide: [own.slide[0] - other.slide[1], own.slide[1] - other.slide[0]],
  };
}

function faceOf({ piece, point }: JointEnd): TouchRange {
  const round: Range = [-ROUND_ABOUT_MM / 2, ROUND_ABOUT_MM / 2];
  const frame = pointFrame(point);
  const box = point.at === undefined ? undefined : shapeOf(piece.part).solids.map(boundsOf).find((one) => holds(one, point.at as Place));
  if (frame === undefined || box === undefined || point.at === undefined) return { side: point.sideMm ?? round, slide: point.slideMm ?? round };
  return { side: point.sideMm ?? round, slide: point.slideMm ?? reachIn(box, point.at, axis(frame.r, 1)) };
}

interface Bounds {
  readonly low: Vector;
  readonly high: Vector;
}

function boundsOf(solid: Solid): Bounds {
  const [x, y, z] = solid.atMm ?? [0, 0, 0];
  const half = solid.shape === 'box' ? solid.sizeMm.map((size) => size / 2) : (['x', 'y', 'z'] as const).map((one) => (one === solid.along ? solid.lengthMm : solid.diameterMm) / 2);
  const [i = 0, j = 0, k = 0] = half;
  return { low: [x - i, y - j, z - k], high: [x + i, y + j, z + k] };
}

/** A millimetre is neither here nor there. */
const holds = ({ low, high }: Bounds, at: Place): boolean => at.every((value, one) => value >= (low[one] as number) - 1 && value <= (high[one] as number) + 1);

/** How far a solid reaches from a place along a direction, and against it. */
function reachIn({ low, high }: Bounds, at: Place, along: Vector): Range {
  const main = [0, 1, 2].reduce((best, one) => (Math.abs(along[one] as number) > Math.abs(along[best] as number) ? one : best), 0);
  const [back, ahead] = [(low[main] as number) - (at[main] as number), (high[main] as number) - (at[main] as number)];
  return (along[main] as number) > 0 ? [Math.min(back, 0), Math.max(ahead, 0)] : [Math.min(-ahead, 0), Math.max(-back, 0)];
}
