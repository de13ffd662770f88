/**
 * The order of elimination that keeps a sparse matrix's envelope small: reverse Cuthill–McKee, breadth first from a far node,
 * neighbours by rising degree, then turned round (George & Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981).
 * Ties go by number, so that the same graph always gives the same order.
 */
export function eliminationOrder(neighbours: readonly (readonly number[])[]): number[] {
  const seen = new Uint8Array(neighbours.length);
  const order: number[] = [];
  for (let node = 0; node < neighbours.length; node++) {
    if (seen[node] === 1) continue;
    const from = farNode(neighbours, node);
    for (const next of breadthFirst(neighbours, from).flat()) {
      seen[next] = 1;
      order.push(next);
    }
  }
  return order.toReversed();
}

/** A node about as far out as any: start at one of the last level until the levels grow no more. */
function farNode(neighbours: readonly (readonly number[])[], start: number): number {
  let node = start;
  let levels = breadthFirst(neighbours, node);
  for (;;) {
    const last = levels[levels.length - 1]!;
    const candidate = last.reduce((best, one) => (neighbours[one]!.length < neighbours[best]!.length ? one : best));
    const further = breadthFirst(neighbours, candidate);
    if (further.length <= levels.length) return node;
    node = candidate;
    levels = further;
  }
}

function breadthFirst(neighbours: readonly (readonly number[])[], start: number): number[][] {
  const seen = new Set([start]);
  const levels = [[start]];
  for (;;) {
    const next: number[] = [];
    for (const node of levels[levels.length - 1]!) {
      const fresh = neighbours[node]!.filter((one) => !seen.has(one)).sort((a, b) => neighbours[a]!.length - neighbours[b]!.length || a - b);
      for (const one of fresh) {
        if (seen.has(one)) continue;
        seen.add(one);
        next.push(one);
      }
    }
    if (next.length === 0) return levels;
    levels.push(next);
  }
}
