import { type Spot, convexHull } from '../../calc/mechanics/convexHull.ts';
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
  const outlines = bodies.flatMap((corners) => outlineOf(corners.map((corner) => [dot(corner, across), corner[1]])) ?? []).toSorted((a, b) => a.left - b.left);
  const stops = outlines.flatMap(({ left, right }) => [left, right]).toSorted((a, b) => a - b);
  let [areaMm2, momentU, momentV, next] = [0, 0, 0, 0];
  let open: Outline[] = [];
  for (const [from, to] of stripsBetween(stops)) {
    const u = (from + to) / 2;
    for (let one = outlines[next]; one !== undefined && one.left < u; one = outlines[next]) {
      open.push(one);
      next += 1;
    }
    open = open.filter(({ right }) => right > u);
    for (const [low, high] of merged(open.map((one) => [heightAt(one.lower, u), heightAt(one.upper, u)] as const))) {
      const area = (high - low) * (to - from);
      areaMm2 += area;
      momentU += area * u;
      momentV += (area * (low + high)) / 2;
    }
  }
  const centreMm = areaMm2 > 0 ? add(scale(across, momentU / areaMm2), [0, momentV / areaMm2, 0]) : ([0, 0, 0] as const);
  return { along, areaMm2, centreMm, widthMm: (stops.at(-1) ?? 0) - (stops[0] ?? 0) };
}

interface Outline {
  readonly left: number;
  readonly right: number;
  readonly lower: readonly Spot[];
  readonly upper: readonly Spot[];
}

/** Lower and upper edge of a convex outline from left to right; `undefined` where it is seen edge on. */
function outlineOf(spots: readonly Spot[]): Outline | undefined {
  const ring = convexHull(spots);
  const [left, right] = [Math.min(...ring.map(([u]) => u)), Math.max(...ring.map(([u]) => u))];
  const first = ring[0];
  if (first === undefined || ring.length < 3 || right - left < SAME_MM) return undefined;
  // The hull starts at its left end and goes along the bottom.
  const [end, start] = [ring.findIndex(([u]) => u === right), ring.findLastIndex(([u]) => u === right)];
  return { left, right, lower: ring.slice(0, end + 1), upper: [...ring.slice(start), first].toReversed() };
}

function heightAt(edge: readonly Spot[], u: number): number {
  let [below, above] = [0, edge.length - 1];
  while (above - below > 1) {
    const middle = (below + above) >> 1;
    if ((edge[middle] as Spot)[0] <= u) below = middle;
    else above = middle;
  }
  const [from, to] = [edge[below] as Spot, edge[above] as Spot];
  return from[1] + ((to[1] - from[1]) * (u - from[0])) / (to[0] - from[0]);
}

function* stripsBetween(stops: readonly number[]): Generator<readonly [from: number, to: number]> {
  let from = stops[0] ?? 0;
  const widest = Math.max(WIDEST_STRIP_MM, ((stops.at(-1) ?? 0) - from) / MOST_STRIPS);
  for (const stop of stops) {
    if (stop - from < SAME_MM) continue;
    const parts = Math.ceil((stop - from) / widest);
    for (let at = 0; at < parts; at += 1) yield [from + ((stop - from) * at) / parts, from + ((stop - from) * (at + 1)) / parts];
    from = stop;
  }
}

/** Heights that overlap, as one. */
function merged(spans: readonly (readonly [low: number, high: number])[]): (readonly [low: number, high: number])[] {
  const union: [number, number][] = [];
  for (const [low, high] of spans.toSorted((a, b) => a[0] - b[0])) {
    const last = union.at(-1);
    if (last !== undefined && low <= last[1]) last[1] = Math.max(last[1], high);
    else union.push([low, high]);
  }
  return union;
}
