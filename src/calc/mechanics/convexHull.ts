/** A place on the floor. */
export type Spot = readonly [x: number, z: number];

/** The corners of the smallest convex shape round some spots, one way round, without those on its edges (Andrew's monotone chain). */
export function convexHull(spots: readonly Spot[]): Spot[] {
  const ordered = spots.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
  const sorted = ordered.filter(([x, z], i) => i === 0 || x !== ordered[i - 1]![0] || z !== ordered[i - 1]![1]);
  if (sorted.length < 3) return sorted;
  const half = (row: readonly Spot[]): Spot[] => {
    const chain: Spot[] = [];
    for (const spot of row) {
      while (chain.length >= 2 && turn(chain.at(-2)!, chain.at(-1)!, spot) <= 0) chain.pop();
      chain.push(spot);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.toReversed())];
}

/** Twice the area of a triangle, positive one way round. */
const turn = (a: Spot, b: Spot, c: Spot) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** How far a spot lies inside the line through two corners; negative outside. */
export function insideEdge(spot: Spot, from: Spot, to: Spot): number {
  return turn(from, to, spot) / Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** From a spot to the nearest point between two corners. */
export function distanceToEdge(spot: Spot, from: Spot, to: Spot): number {
  const [dx, dz] = [to[0] - from[0], to[1] - from[1]];
  const along = ((spot[0] - from[0]) * dx + (spot[1] - from[1]) * dz) / (dx * dx + dz * dz);
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(spot[0] - from[0] - t * dx, spot[1] - from[1] - t * dz);
}
