/** Things to be put in an order at the least cost. */
export interface Sequence {
  readonly count: number;
  /** Cost of going from one to another: entry `from·count + to`. Infinity where that cannot be. */
  readonly costs: Float64Array;
  /** Cost of beginning with each. */
  readonly firstCosts: Float64Array;
  /** What must come before each, directly or through others. */
  readonly before: readonly ReadonlySet<number>[];
  /** Place each must have, counted from 0; −1 where it is free. */
  readonly places: Int32Array;
}

export interface Ordered {
  readonly order: readonly number[];
  readonly cost: number;
}

export function costOf({ count, costs, firstCosts }: Sequence, order: readonly number[]): number {
  return order.reduce((sum, one, k) => sum + (k === 0 ? firstCosts[one]! : costs[order[k - 1]! * count + one]!), 0);
}

/** No order can cost less than each one's cheapest way in, all together. */
export function leastCost({ count, costs, firstCosts, before }: Sequence): number {
  let sum = 0;
  for (let to = 0; to < count; to++) {
    let least = before[to]!.size === 0 ? firstCosts[to]! : Infinity;
    for (let from = 0; from < count; from++) if (from !== to && !before[from]!.has(to)) least = Math.min(least, costs[from * count + to]!);
    sum += least;
  }
  return sum;
}
