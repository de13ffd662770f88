/** What one search has come to: pieces that hang together, and those of them not looked around from yet. */
interface Part {
  readonly pieces: number[];
  readonly open: number[];
  /** The part that it has turned out to be one with. */
  into: Part | undefined;
}

/**
 * The parts that pieces come in, all but the largest: searched from the pieces that were cut loose, all at once, each by one piece in turn, until
 * one search is left; so that it takes about as many looks as there are pieces in the smaller parts.
 */
export function smallerParts(ends: readonly number[], neighbours: (piece: number) => readonly number[]): number[][] {
  // The last by order first: of two alike, what comes first stays.
  const parts = [...new Set(ends)].toSorted((a, b) => b - a).map((piece): Part => ({ pieces: [piece], open: [piece], into: undefined }));
  const partOf = new Map(parts.map((part) => [part.pieces[0] as number, part]));
  const look = (part: Part): void => {
    const piece = part.open.pop();
    if (piece === undefined) return;
    let own = part;
    for (const other of neighbours(piece)) {
      const met = partOf.get(other);
      if (met !== undefined) own = joined(own, final(met));
      else {
        partOf.set(other, own);
        own.pieces.push(other);
        own.open.push(other);
      }
    }
  };
  let searching = parts;
  while (searching.length > 1) {
    for (const part of searching) if (part.into === undefined) look(part);
    searching = searching.filter(({ into, open }) => into === undefined && open.length > 0);
  }
  const done = parts.filter(({ into, open }) => into === undefined && open.length === 0);
  const most = done.reduce((largest, { pieces }) => Math.max(largest, pieces.length), 0);
  // The one that is left may be smaller than another: it is looked through no further than to tell.
  const [last] = searching;
  const lookOn = (part: Part): void => {
    while (part.open.length > 0 && part.pieces.length <= most) look(part);
  };
  if (last !== undefined) lookOn(last);
  const known = parts.filter(({ into, open }) => into === undefined && open.length === 0).map(({ pieces }) => pieces.toSorted((a, b) => a - b));
  if (last !== undefined && last.open.length > 0) return known;
  const largest = known.reduce<number[] | undefined>((best, one) => (best === undefined || one.length > best.length || (one.length === best.length && (one[0] as number) < (best[0] as number)) ? one : best), undefined);
  return known.filter((one) => one !== largest);
}

/** The part that a part has become by now. */
function final(part: Part): Part {
  let now = part;
  while (now.into !== undefined) {
    if (now.into.into !== undefined) now.into = now.into.into;
    now = now.into;
  }
  return now;
}

function joined(one: Part, other: Part): Part {
  if (one === other) return one;
  const [large, small] = one.pieces.length >= other.pieces.length ? [one, other] : [other, one];
  for (const piece of small.pieces) large.pieces.push(piece);
  for (const piece of small.open) large.open.push(piece);
  small.into = large;
  return large;
}
