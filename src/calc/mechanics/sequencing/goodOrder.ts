import { type Ordered, type Sequence, costOf } from './Sequence.ts';

/** Kicks out of a good order in search of a better one: fewer for more things, each of which takes longer. */
const kicksFor = (count: number) => Math.max(5, Math.min(400, Math.floor(4e6 / count ** 3)));

/**
 * A good order, not surely the best: starts from one that keeps the constraints, moves stretches of it about while that helps,
 * then kicks it and tries again (iterated local search). The same input gives the same order. Infinite cost: no order keeps the
 * constraints, or none was found that avoids what cannot follow.
 */
export function goodOrder(sequence: Sequence): Ordered {
  const start = lawfulOrder(sequence);
  if (start === undefined) return { order: [], cost: Infinity };
  const random = randomBelow();
  let best = improved(sequence, start);
  for (let kick = 0; kick < kicksFor(sequence.count); kick++) {
    const tried = improved(sequence, kicked(sequence, best.order, random));
    if (tried.cost < best.cost) best = tried;
  }
  return best;
}

/** An order that keeps every constraint, or `undefined` where none does: of what may come next, what must come soonest. */
export function lawfulOrder({ count, before, places }: Sequence): number[] | undefined {
  // The latest place each may have, so that what follows it still finds room.
  const latest = Array.from({ length: count }, (_, k) => (places[k]! >= 0 ? places[k]! : count - 1));
  const followers = Array.from({ length: count }, (_, k) => [...before.keys()].filter((other) => before[other]!.has(k)));
  const byFollowers = [...before.keys()].sort((a, b) => followers[a]!.length - followers[b]!.length);
  for (const k of byFollowers) {
    const due = followers[k]!.map((other) => latest[other]!).sort((a, b) => a - b);
    due.forEach((one, i) => (latest[k] = Math.min(latest[k]!, one - 1 - i)));
  }
  const done = new Set<number>();
  while (done.size < count) {
    const mayCome = (k: number) => !done.has(k) && [-1, done.size].includes(places[k]!) && [...before[k]!].every((one) => done.has(one));
    const ready = [...before.keys()].filter(mayCome);
    const next = ready.sort((a, b) => latest[a]! - latest[b]! || a - b)[0];
    if (next === undefined || latest[next]! < done.size) return undefined;
    done.add(next);
  }
  return [...done];
}

/** Moves stretches elsewhere as long as that saves. */
function improved(sequence: Sequence, start: readonly number[]): Ordered {
  let order = [...start];
  for (let better = true; better; ) {
    better = false;
    const longest = Math.max(3, Math.floor(order.length / 3));
    for (let size = 1; size <= longest && !better; size++) {
      const moved = firstSavingMove(sequence, order, size);
      if (moved !== undefined) [order, better] = [moved, true];
    }
  }
  return { order, cost: costOf(sequence, order) };
}

function firstSavingMove(sequence: Sequence, order: readonly number[], size: number): number[] | undefined {
  const { count, costs, firstCosts } = sequence;
  const way = (from: number | undefined, to: number | undefined) => {
    if (to === undefined) return 0;
    return from === undefined ? firstCosts[to]! : costs[from * count + to]!;
  };
  for (let at = 0; at + size <= order.length; at++) {
    const [head, tail] = [order[at]!, order[at + size - 1]!];
    const [before, after] = [order[at - 1], order[at + size]];
    const open = way(before, head) + way(tail, after);
    const closed = way(before, after);
    for (let to = 0; to <= order.length; to++) {
      if (to >= at && to <= at + size) continue;
      const [left, right] = [order[to - 1], order[to]];
      const saving = open - closed + way(left, right) - way(left, head) - way(tail, right);
      // From where nothing was possible, any possible way is a saving.
      if (!(saving > 1e-9 || (open === Infinity && way(left, head) + way(tail, right) + closed < Infinity))) continue;
      const moved = withStretchAt(order, at, size, to);
      if (keeps(sequence, moved)) return moved;
    }
  }
  return undefined;
}

function withStretchAt(order: readonly number[], at: number, size: number, to: number): number[] {
  const stretch = order.slice(at, at + size);
  const rest = [...order.slice(0, at), ...order.slice(at + size)];
  rest.splice(to > at ? to - size : to, 0, ...stretch);
  return rest;
}

/** Whether an order keeps every constraint. */
export function keeps({ before, places }: Sequence, order: readonly number[]): boolean {
  const done = new Set<number>();
  for (const [place, one] of order.entries()) {
    if (places[one]! >= 0 && places[one] !== place) return false;
    for (const must of before[one]!) if (!done.has(must)) return false;
    done.add(one);
  }
  return true;
}

/** Moves a few random stretches, wherever the constraints let them go. */
function kicked(sequence: Sequence, order: readonly number[], random: (below: number) => number): number[] {
  let now = [...order];
  for (let moves = 0, tries = 0; moves < 3 && tries < 60; tries++) {
    const size = 1 + random(Math.min(4, now.length));
    const at = random(now.length - size + 1);
    const moved = withStretchAt(now, at, size, random(now.length + 1 - size) + (random(2) === 0 ? 0 : size));
    if (moved.length !== now.length || !keeps(sequence, moved)) continue;
    now = moved;
    moves++;
  }
  return now;
}

/** The same whole numbers on every engine: xorshift (Marsaglia 2003). */
function randomBelow(): (below: number) => number {
  let state = 0x9e37_79b9;
  return (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
}
