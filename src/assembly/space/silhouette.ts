import { type Vector, add, dot, scale } from '../placing/Transform.ts';

/** What is seen of some bodies from afar, along a level direction. */
export interface Silhouette {
  readonly along: Vector;
  readonly areaMm2: number;
  /** Centre of that area, in the plane through the origin across the direction. */
  readonly centreMm: Vector;
  /** Level, and across the direction. */
  readonly widthMm: number;
}

/** From all round: the other half is the same from behind. At 22.5° the widest view is missed by less than 2 % (cos 11.25°). */
const DIRECTIONS = 8;

/** Silhouettes of convex bodies (corners, +Y up) together, from level directions all round; what hides behind another counts once. */
export function silhouettes(bodies: readonly (readonly Vector[])[]): Silhouette[] {
  return Array.from({ length: DIRECTIONS }, (_, at) => {
    const angle = (Math.PI * at) / DIRECTIONS;
    return silhouette(bodies, [Math.sin(angle), 0, Math.cos(angle)]);
  }).filter(({ areaMm2 }) => areaMm2 > 0);
}

/** Strips wider than this are divided: where edges bend or cross within a strip, its middle stands for it. */
const WIDEST_STRIP_MM = 8;
/** What is wider than people build takes wider strips. */
const MOST_STRIPS = 500;
/** Ends nearer to each other than this are one, and a view thinner than this is edge on. */
const SAME_MM = 0.05;

/** The outline's area by upright strips between the ends of the bodies, each as high as the union of the outlines at its middle. */
function silhouette(bodies: readonly (readonly Vector[])[], along: Vector): Silhouette {
  const across: Vector = [along[2], 0, -along[0]];
  const outlines = bodies.flatMap((corners) => outlineOf(corners, across) ?? []).sort((a, b) => a.left - b.left);
  const stops = Float64Array.from(outlines.flatMap(({ left, right }) => [left, right])).sort();
  const widthMm = stops.length === 0 ? 0 : stops[stops.length - 1]! - stops[0]!;
  const widest = Math.max(WIDEST_STRIP_MM, widthMm / MOST_STRIPS);
  const sums: Sums = { areaMm2: 0, momentU: 0, momentV: 0 };
  const open: Outline[] = [];
  let next = 0;
  let from = stops[0] ?? 0;
  for (const stop of stops) {
    if (stop - from < SAME_MM) continue;
    const parts = Math.ceil((stop - from) / widest);
    for (let at = 0; at < parts; at += 1) {
      const left = from + ((stop - from) * at) / parts;
      const right = from + ((stop - from) * (at + 1)) / parts;
      const u = (left + right) / 2;
      while (next < outlines.length && outlines[next]!.left < u) open.push(outlines[next++]!);
      addStrip(sums, open, u, right - left);
    }
    from = stop;
  }
  const { areaMm2, momentU, momentV } = sums;
  const centreMm = areaMm2 > 0 ? add(scale(across, momentU / areaMm2), [0, momentV / areaMm2, 0]) : ([0, 0, 0] as const);
  return { along, areaMm2, centreMm, widthMm };
}

interface Sums {
  areaMm2: number;
  momentU: number;
  momentV: number;
}

/** Heights at which outlines that are open at a place begin and end, by rising beginning. Kept, as a rig has thousands of strips. */
const lows: number[] = [];
const highs: number[] = [];

/** Adds what a strip shows; outlines that end before its middle are dropped. */
function addStrip(sums: Sums, open: Outline[], u: number, width: number): void {
  let count = 0;
  for (let at = 0; at < open.length; at += 1) {
    const outline = open[at]!;
    if (!(outline.right > u)) continue;
    const low = heightAt(outline.lower, u);
    let place = count;
    for (; place > 0 && lows[place - 1]! > low; place -= 1) {
      lows[place] = lows[place - 1]!;
      highs[place] = highs[place - 1]!;
    }
    lows[place] = low;
    highs[place] = heightAt(outline.upper, u);
    open[count] = outline;
    count += 1;
  }
  open.length = count;
  for (let at = 0; at < count; ) {
    const low = lows[at]!;
    let high = highs[at]!;
    for (at += 1; at < count && lows[at]! <= high; at += 1) high = Math.max(high, highs[at]!);
    const area = (high - low) * width;
    sums.areaMm2 += area;
    sums.momentU += area * u;
    sums.momentV += (area * (low + high)) / 2;
  }
}

interface Outline {
  readonly left: number;
  readonly right: number;
  readonly lower: Edge;
  readonly upper: Edge;
}

/** Corners from left to right: across and up, in turn. */
type Edge = Float64Array;

/** Lower and upper edge of the outline of a convex body (Andrew's monotone chain); `undefined` where it is seen edge on. */
function outlineOf(corners: readonly Vector[], across: Vector): Outline | undefined {
  const spots = fromLeft(corners, across);
  const count = spots.length;
  if (count < 6 || spots[count - 2]! - spots[0]! < SAME_MM) return undefined;
  const lower = edgeOf(spots, 1);
  const upper = edgeOf(spots, -1);
  // Both hold its two ends, and nothing else where it is flat.
  return lower.length + upper.length < 10 ? undefined : { left: spots[0]!, right: spots[count - 2]!, lower, upper };
}

/** Where the corners are seen, from left to right, each place once. */
function fromLeft(corners: readonly Vector[], across: Vector): Float64Array {
  const spots = new Float64Array(corners.length * 2);
  let count = 0;
  for (let at = 0; at < corners.length; at += 1) {
    const u = dot(corners[at]!, across);
    const v = corners[at]![1];
    let place = count;
    while (place > 0 && (spots[place - 2]! > u || (spots[place - 2] === u && spots[place - 1]! > v))) place -= 2;
    if (place > 0 && spots[place - 2] === u && spots[place - 1] === v) continue;
    spots.copyWithin(place + 2, place, count);
    spots[place] = u;
    spots[place + 1] = v;
    count += 2;
  }
  return spots.subarray(0, count);
}

/** The corners that bulge downwards (1) or upwards (−1). */
function edgeOf(spots: Float64Array, side: 1 | -1): Edge {
  const edge = new Float64Array(spots.length);
  let count = 0;
  for (let at = 0; at < spots.length; at += 2) {
    const u = spots[at]!;
    const v = spots[at + 1]!;
    while (count >= 4 && side * turn(edge, count, u, v) <= 0) count -= 2;
    edge[count] = u;
    edge[count + 1] = v;
    count += 2;
  }
  return edge.subarray(0, count);
}

/** Twice the area of the triangle of the last two corners and a spot, positive anticlockwise. */
const turn = (edge: Edge, count: number, u: number, v: number): number =>
  (edge[count - 2]! - edge[count - 4]!) * (v - edge[count - 3]!) - (edge[count - 1]! - edge[count - 3]!) * (u - edge[count - 4]!);

function heightAt(edge: Edge, u: number): number {
  let below = 0;
  let above = edge.length / 2 - 1;
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if (edge[middle * 2]! <= u) below = middle;
    else above = middle;
  }
  const left = edge[below * 2]!;
  const low = edge[below * 2 + 1]!;
  return low + ((edge[above * 2 + 1]! - low) * (u - left)) / (edge[above * 2]! - left);
}
