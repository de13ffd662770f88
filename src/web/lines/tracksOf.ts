/** Something that runs from one height to another. */
export interface Run {
  readonly key: string;
  readonly from: number;
  readonly to: number;
}

/** Which track each runs in, counted from 0: the shortest innermost, and no two in one track touch. */
export function tracksOf(runs: readonly Run[]): ReadonlyMap<string, number> {
  const spans = runs.map(({ key, from, to }) => ({ key, top: Math.min(from, to), bottom: Math.max(from, to) })).toSorted((a, b) => a.bottom - a.top - (b.bottom - b.top) || a.top - b.top);
  const taken: { top: number; bottom: number }[][] = [];
  const tracks = new Map<string, number>();
  for (const { key, top, bottom } of spans) {
    const free = taken.findIndex((others) => others.every((other) => other.bottom < top || bottom < other.top));
    const track = free === -1 ? taken.length : free;
    (taken[track] ??= []).push({ top, bottom });
    tracks.set(key, track);
  }
  return tracks;
}
