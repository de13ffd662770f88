/** So many alike of one thing, to be packed by mass. */
export interface Lot<T> {
  readonly of: T;
  readonly eachG: number;
  readonly count: number;
}

export interface Packing<T> {
  readonly cases: readonly (readonly Lot<T>[])[];
  /** So many cases at least, however they are packed: by the sum, and by what cannot share a case. */
  readonly atLeast: number;
}

/** Rounding must not open another case. */
const HAIR = 1 + 1e-9;

/**
 * Things into few cases, none over `mostG`, by mass only; no single thing may be over it. First the heaviest, each into the first
 * case with room: never more than 11/9 of the fewest and a case (Johnson 1973, from memory), tried with cases filled a little less
 * too, which at times takes fewer (MULTIFIT: Coffman, Garey and Johnson 1978, from memory). Then, in so many cases, in the order
 * given so that like stays with like, as evenly as that order lets, where that goes.
 */
export function packCases<T>(lots: readonly Lot<T>[], mostG: number): Packing<T> {
  const own = lots.filter(({ count }) => count > 0);
  const atLeast = fewestCases(own, mostG);
  const first = fewestFirstFit(own, mostG, atLeast);
  if (inOrder(own, mostG).length > first.length) return { cases: first, atLeast };
  return { cases: inOrder(own, evenest(own, mostG, first.length)), atLeast };
}

/** Nobody feels less than this in a case: like stays with like for it. */
const FELT_G = 500;

/** Into so many cases at most, the heaviest of them about as light as can be found; that many must do at `mostG`. */
export function lightestCases<T>(lots: readonly Lot<T>[], mostG: number, cases: number): Packing<T>['cases'] {
  const own = lots.filter(({ count }) => count > 0);
  const sumG = own.reduce((sum, { eachG, count }) => sum + eachG * count, 0);
  let best = packCases(own, mostG).cases;
  let [low, high] = [Math.max(0, sumG / Math.max(1, cases), ...own.map(({ eachG }) => eachG)), mostG];
  for (let next = low; high - low > FELT_G; next = (low + high) / 2) {
    const packed = packCases(own, Math.max(next, 1)).cases;
    if (packed.length <= cases) [best, high] = [packed, next];
    else low = next;
  }
  const ordered = inOrder(own, evenest(own, mostG, cases));
  return ordered.length <= cases && heaviest(ordered) <= heaviest(best) + FELT_G ? ordered : best;
}

const heaviest = (cases: readonly (readonly Lot<unknown>[])[]): number => Math.max(0, ...cases.map((lots) => lots.reduce((sum, { eachG, count }) => sum + eachG * count, 0)));

/** By the sum of masses; by what fills more than half a case, of which no two share one. */
export function fewestCases(lots: readonly Lot<unknown>[], mostG: number): number {
  const sumG = lots.reduce((sum, { eachG, count }) => sum + eachG * count, 0);
  const large = lots.reduce((sum, { eachG, count }) => sum + (eachG > (mostG / 2) * HAIR ? count : 0), 0);
  return Math.max(Math.ceil(sumG / mostG / HAIR), large);
}

const TRIES = 12;

function fewestFirstFit<T>(lots: readonly Lot<T>[], mostG: number, atLeast: number): Lot<T>[][] {
  let best = firstFit(lots, mostG);
  const sumG = lots.reduce((sum, { eachG, count }) => sum + eachG * count, 0);
  const leastG = Math.max(sumG / Math.max(1, atLeast), ...lots.map(({ eachG }) => eachG));
  for (let at = 1; at <= TRIES && best.length > atLeast; at += 1) {
    const other = firstFit(lots, mostG + ((leastG - mostG) * at) / TRIES);
    if (other.length < best.length) best = other;
  }
  return best;
}

interface Open<T> {
  readonly lots: Lot<T>[];
  roomG: number;
}

function firstFit<T>(lots: readonly Lot<T>[], mostG: number): Lot<T>[][] {
  const open: Open<T>[] = [];
  for (const lot of lots.toSorted((a, b) => b.eachG - a.eachG)) {
    let left = lot.count;
    for (const one of open) left -= put(one, lot, left);
    while (left > 0) {
      const one: Open<T> = { lots: [], roomG: mostG };
      open.push(one);
      left -= put(one, lot, left);
    }
  }
  return open.map((one) => one.lots);
}

/** In the order given, a new case whenever the next thing does not fit. */
function inOrder<T>(lots: readonly Lot<T>[], mostG: number): Lot<T>[][] {
  const open: Open<T>[] = [];
  for (const lot of lots) {
    let left = lot.count;
    const last = open.at(-1);
    if (last !== undefined) left -= put(last, lot, left);
    while (left > 0) {
      const one: Open<T> = { lots: [], roomG: mostG };
      open.push(one);
      left -= put(one, lot, left);
    }
  }
  return open.map((one) => one.lots);
}

/** Puts in as many as fit; says how many. */
function put<T>(into: Open<T>, lot: Lot<T>, wanted: number): number {
  const fits = fitting(into.roomG, lot, wanted);
  if (fits === 0) {
    if (into.lots.length > 0) return 0;
    throw new Error('Case packing needs every thing to fit into an empty case.');
  }
  into.lots.push({ ...lot, count: fits });
  into.roomG -= fits * lot.eachG;
  return fits;
}

const fitting = (roomG: number, { eachG }: Lot<unknown>, wanted: number): number => (eachG <= 0 ? wanted : Math.max(0, Math.min(wanted, Math.floor((roomG * HAIR) / eachG))));

/** How many cases they take, packed in order; each thing fits into an empty one. */
function countInOrder(lots: readonly Lot<unknown>[], mostG: number): number {
  let cases = 0;
  let roomG = 0;
  for (const lot of lots) {
    let left = lot.count;
    while (left > 0) {
      const fits = cases === 0 ? 0 : fitting(roomG, lot, left);
      left -= fits;
      roomG -= fits * lot.eachG;
      if (left === 0) break;
      cases += 1;
      roomG = mostG;
    }
  }
  return cases;
}

const HALVINGS = 40;

/** The lightest that the heaviest of `cases` cases can be, packed in order. */
function evenest<T>(lots: readonly Lot<T>[], mostG: number, cases: number): number {
  const heaviestG = Math.max(0, ...lots.map(({ eachG }) => eachG));
  let [low, high] = [heaviestG, mostG];
  for (let step = 0; step < HALVINGS && high - low > 1; step += 1) {
    const middle = (low + high) / 2;
    if (countInOrder(lots, middle) <= cases) high = middle;
    else low = middle;
  }
  return high;
}
