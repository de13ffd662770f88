import { symmetricEigen } from './symmetricEigen.ts';

/** What a direction must keep beside the basis, as a share of itself, to be worth adding. */
const WORTH_ADDING = 1e-11;

/** An orthonormal basis, what an operator makes of each of its vectors, and the best eigenvectors that lie within it. */
export class RitzBasis {
  private readonly size: number;
  private readonly apply: (x: Float64Array) => Float64Array;
  private readonly vectors: Float64Array[] = [];
  private readonly images: Float64Array[] = [];
  /** ⟨vₖ, A·vⱼ⟩ for k ≤ j. */
  private readonly products: Float64Array[] = [];
  private newestFrom = 0;

  constructor(size: number, apply: (x: Float64Array) => Float64Array) {
    this.size = size;
    this.apply = apply;
  }

  /** Whether it spans everything. */
  get whole(): boolean {
    return this.vectors.length === this.size;
  }

  /** Adds what is new in these vectors, as the newest block. */
  add(candidates: readonly Float64Array[]): void {
    this.newestFrom = this.vectors.length;
    for (const candidate of candidates) {
      const fresh = this.whole ? undefined : this.beside(candidate);
      if (fresh !== undefined) this.push(fresh);
    }
  }

  /** Makes it span everything. */
  addUnits(): void {
    const unit = (k: number) => {
      const vector = new Float64Array(this.size);
      vector[k] = 1;
      return vector;
    };
    if (this.vectors.length === 0) for (let k = 0; k < this.size; k++) this.push(unit(k));
    else this.add(Array.from({ length: this.size }, (_, k) => unit(k)));
  }

  newest(): Float64Array[] {
    return this.vectors.slice(this.newestFrom);
  }

  newestImages(): Float64Array[] {
    return this.images.slice(this.newestFrom);
  }

  /** The largest eigenvalues as far as the basis shows them, their vectors, and how far A·y is from θ·y. */
  largest(count: number): { readonly values: number[]; readonly vectors: Float64Array[]; readonly residuals: number[] } {
    const size = this.vectors.length;
    const rows = this.products.map((row, j) => {
      const whole = new Float64Array(size);
      whole.set(row);
      for (let k = j + 1; k < size; k++) whole[k] = this.products[k]![j]!;
      return whole;
    });
    const eigen = symmetricEigen(rows);
    const order = Array.from({ length: Math.min(count, size) }, (_, k) => size - 1 - k);
    const values = order.map((k) => eigen.values[k]!);
    const vectors = order.map((k) => combination(this.vectors, eigen.vectors[k]!, this.size));
    const residuals = order.map((k, i) => {
      const image = combination(this.images, eigen.vectors[k]!, this.size);
      addTimes(image, vectors[i]!, -values[i]!);
      return Math.sqrt(dot(image, image));
    });
    return { values, vectors, residuals };
  }

  private push(vector: Float64Array): void {
    const image = this.apply(vector);
    this.vectors.push(vector);
    this.images.push(image);
    this.products.push(Float64Array.from(this.vectors, (one) => dot(one, image)));
  }

  /** The part of a vector outside the basis, taken out twice so that it is so to the last digit, and of length one. */
  private beside(candidate: Float64Array): Float64Array | undefined {
    const vector = Float64Array.from(candidate);
    const before = Math.sqrt(dot(vector, vector));
    for (let pass = 0; pass < 2; pass++) for (const one of this.vectors) addTimes(vector, one, -dot(one, vector));
    const after = Math.sqrt(dot(vector, vector));
    if (!(after > WORTH_ADDING * before)) return undefined;
    for (let i = 0; i < vector.length; i++) vector[i]! /= after;
    return vector;
  }
}

function combination(vectors: readonly Float64Array[], shares: Float64Array, size: number): Float64Array {
  const sum = new Float64Array(size);
  vectors.forEach((vector, k) => addTimes(sum, vector, shares[k]!));
  return sum;
}

function addTimes(sum: Float64Array, vector: Float64Array, factor: number): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += factor * vector[i]!;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
