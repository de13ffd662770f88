/** Eigenvalues of a symmetric matrix, ascending, and their vectors: the k-th vector is row k of `vectors`. */
export interface Eigen {
  readonly values: Float64Array;
  readonly vectors: readonly Float64Array[];
}

/** Sweeps of one eigenvalue before it counts as a fault of ours; two or three are usual. */
const MOST_SWEEPS = 60;

/**
 * All eigenvalues and vectors of a small dense symmetric matrix, given as rows: Householder reduction to three diagonals, then
 * QL with implicit shifts (Bowdler, Martin, Reinsch & Wilkinson, Numer. Math. 11, 1968; the public-domain EISPACK tred2, tql2).
 */
export function symmetricEigen(rows: readonly ArrayLike<number>[]): Eigen {
  const size = rows.length;
  const basis = rows.map((row) => Float64Array.from(row));
  const diagonal = new Float64Array(size);
  const beside = new Float64Array(size);
  reduce(basis, diagonal, beside);
  accumulate(basis, diagonal);
  // Rotations act on columns; as rows they run along memory.
  const vectors = transposed(basis);
  rotate(diagonal, beside, vectors);
  const order = [...diagonal.keys()].sort((a, b) => diagonal[a]! - diagonal[b]!);
  return { values: Float64Array.from(order, (k) => diagonal[k]!), vectors: order.map((k) => vectors[k]!) };
}

function transposed(rows: readonly Float64Array[]): Float64Array[] {
  return rows.map((_, k) => Float64Array.from(rows, (row) => row[k]!));
}

/** Householder reflections from the last row up. Leaves the reflectors in the rows, their sizes in `diagonal`, the side diagonal in `beside`. */
function reduce(a: Float64Array[], diagonal: Float64Array, beside: Float64Array): void {
  for (let i = a.length - 1; i > 0; i--) {
    const row = a[i]!;
    let scale = 0;
    for (let k = 0; k < i; k++) scale += Math.abs(row[k]!);
    if (i === 1 || scale === 0) {
      beside[i] = row[i - 1]!;
      diagonal[i] = 0;
      continue;
    }
    let size = 0;
    for (let k = 0; k < i; k++) {
      row[k]! /= scale;
      size += row[k]! * row[k]!;
    }
    const edge = row[i - 1]!;
    const root = edge >= 0 ? -Math.sqrt(size) : Math.sqrt(size);
    beside[i] = scale * root;
    size -= edge * root;
    row[i - 1] = edge - root;
    reflect(a, i, size, beside);
    diagonal[i] = size;
  }
  diagonal[0] = 0;
  beside[0] = 0;
}

/** Applies the reflector in row i to the block above it, from both sides; keeps the reflector over its size in column i. */
function reflect(a: Float64Array[], i: number, size: number, work: Float64Array): void {
  const row = a[i]!;
  let along = 0;
  for (let j = 0; j < i; j++) {
    a[j]![i] = row[j]! / size;
    let sum = 0;
    const upper = a[j]!;
    for (let k = 0; k <= j; k++) sum += upper[k]! * row[k]!;
    for (let k = j + 1; k < i; k++) sum += a[k]![j]! * row[k]!;
    work[j] = sum / size;
    along += work[j]! * row[j]!;
  }
  const half = along / (size + size);
  for (let j = 0; j < i; j++) {
    const f = row[j]!;
    const g = work[j]! - half * f;
    work[j] = g;
    const upper = a[j]!;
    for (let k = 0; k <= j; k++) upper[k]! -= f * work[k]! + g * row[k]!;
  }
}

/** Multiplies the reflections together; afterwards `a` holds the orthogonal matrix and `diagonal` the main diagonal. */
function accumulate(a: Float64Array[], diagonal: Float64Array): void {
  for (let i = 0; i < a.length; i++) {
    const row = a[i]!;
    if (diagonal[i] !== 0) {
      const sums = new Float64Array(i);
      for (let k = 0; k < i; k++) {
        const lower = a[k]!;
        for (let j = 0; j < i; j++) sums[j]! += row[k]! * lower[j]!;
      }
      for (let k = 0; k < i; k++) {
        const lower = a[k]!;
        const reflector = lower[i]!;
        for (let j = 0; j < i; j++) lower[j]! -= sums[j]! * reflector;
      }
    }
    diagonal[i] = row[i]!;
    row[i] = 1;
    for (let j = 0; j < i; j++) {
      row[j] = 0;
      a[j]![i] = 0;
    }
  }
}

/** QL with implicit shifts on the three diagonals, carrying the vectors along. */
function rotate(diagonal: Float64Array, beside: Float64Array, vectors: Float64Array[]): void {
  const size = diagonal.length;
  beside.copyWithin(0, 1);
  if (size > 0) beside[size - 1] = 0;
  for (let l = 0; l < size; l++) {
    for (let sweep = 0; ; sweep++) {
      const split = splitFrom(diagonal, beside, l);
      if (split === l) break;
      if (sweep === MOST_SWEEPS) throw new Error(`The eigenvalues of a symmetric matrix of size ${size} did not settle in ${MOST_SWEEPS} sweeps.`);
      sweepBlock(diagonal, beside, vectors, l, split);
    }
  }
}

/** Where the block that begins at l ends: the first side entry too small to count. */
function splitFrom(diagonal: Float64Array, beside: Float64Array, l: number): number {
  let m = l;
  for (; m < diagonal.length - 1; m++) {
    const near = Math.abs(diagonal[m]!) + Math.abs(diagonal[m + 1]!);
    if (Math.abs(beside[m]!) <= Number.EPSILON * near) break;
  }
  return m;
}

function sweepBlock(diagonal: Float64Array, beside: Float64Array, vectors: Float64Array[], l: number, m: number): void {
  let g = (diagonal[l + 1]! - diagonal[l]!) / (2 * beside[l]!);
  let r = Math.hypot(g, 1);
  g = diagonal[m]! - diagonal[l]! + beside[l]! / (g + (g >= 0 ? r : -r));
  let sine = 1;
  let cosine = 1;
  let p = 0;
  for (let i = m - 1; i >= l; i--) {
    const f = sine * beside[i]!;
    const b = cosine * beside[i]!;
    r = Math.hypot(f, g);
    beside[i + 1] = r;
    if (r === 0) {
      diagonal[i + 1]! -= p;
      beside[m] = 0;
      return;
    }
    sine = f / r;
    cosine = g / r;
    g = diagonal[i + 1]! - p;
    r = (diagonal[i]! - g) * sine + 2 * cosine * b;
    p = sine * r;
    diagonal[i + 1] = g + p;
    g = cosine * r - b;
    turnPair(vectors[i]!, vectors[i + 1]!, sine, cosine);
  }
  diagonal[l]! -= p;
  beside[l] = g;
  beside[m] = 0;
}

function turnPair(low: Float64Array, high: Float64Array, sine: number, cosine: number): void {
  for (let k = 0; k < low.length; k++) {
    const f = high[k]!;
    high[k] = sine * low[k]! + cosine * f;
    low[k] = cosine * low[k]! - sine * f;
  }
}
