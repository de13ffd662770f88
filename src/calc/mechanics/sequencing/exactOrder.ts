import type { Ordered, Sequence } from './Sequence.ts';

/** Sets of done things that are looked at, at most: all there are of 14, or those that constraints leave of more. */
export const MOST_SETS = 2 ** 14;
/** Sets are kept as bits of a whole number. */
const MOST_THINGS = 30;

/** Best cost of having done a set with each of its members last, and which came before that one; −1: none. */
interface Reached {
  readonly costs: Float64Array;
  readonly came: Int8Array;
}

/**
 * The cheapest order of all, by dynamic programming over the sets of things already done (Bellman 1962; Held & Karp 1962).
 * `undefined` where there would be too many sets: always enough for 14 things, for up to 30 where constraints leave few sets.
 * An order that does not exist has infinite cost. Ties go to the lower number.
 */
export function exactOrder(sequence: Sequence): Ordered | undefined {
  const { count } = sequence;
  if (count > MOST_THINGS) return undefined;
  const musts = sequence.before.map((set) => [...set].reduce((bits, one) => bits | (1 << one), 0));
  const layers: Map<number, Reached>[] = [new Map([[0, { costs: new Float64Array(0), came: new Int8Array(0) }]])];
  let sets = 1;
  for (let place = 0; place < count; place++) {
    const next = nextLayer(sequence, musts, layers[place]!, place);
    layers.push(next);
    sets += next.size;
    if (sets > MOST_SETS) return undefined;
  }
  return traceBack(count, layers);
}

function nextLayer(sequence: Sequence, musts: readonly number[], layer: ReadonlyMap<number, Reached>, place: number): Map<number, Reached> {
  const { count, places } = sequence;
  const pinned = places.indexOf(place);
  const next = new Map<number, Reached>();
  for (const [done, reached] of layer) {
    for (let to = 0; to < count; to++) {
      const bit = 1 << to;
      const barred = (done & bit) !== 0 || (done & musts[to]!) !== musts[to]! || (pinned >= 0 ? pinned !== to : places[to]! >= 0);
      if (barred) continue;
      const target = next.get(done | bit) ?? { costs: new Float64Array(count).fill(Infinity), came: new Int8Array(count).fill(-1) };
      reach(sequence, done, reached, target, to);
      if (target.costs[to]! < Infinity) next.set(done | bit, target);
    }
  }
  return next;
}

/** The cheapest way to have `to` last, after any of those done. */
function reach({ count, costs, firstCosts }: Sequence, done: number, reached: Reached, target: Reached, to: number): void {
  if (done === 0) {
    target.costs[to] = firstCosts[to]!;
    return;
  }
  for (let from = 0; from < count; from++) {
    const cost = (done & (1 << from)) === 0 ? Infinity : reached.costs[from]! + costs[from * count + to]!;
    if (cost < target.costs[to]!) {
      target.costs[to] = cost;
      target.came[to] = from;
    }
  }
}

function traceBack(count: number, layers: readonly ReadonlyMap<number, Reached>[]): Ordered {
  const [end] = [...layers[count]!.entries()];
  if (end === undefined) return { order: [], cost: Infinity };
  let [done, { costs }] = end;
  const cost = Math.min(...costs);
  let last = costs.indexOf(cost);
  const order: number[] = [];
  for (let place = count; place > 0; place--) {
    order.push(last);
    const { came } = layers[place]!.get(done)!;
    done &= ~(1 << last);
    last = came[last]!;
  }
  return { order: order.toReversed(), cost };
}
