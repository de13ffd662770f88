/**
 * A symmetric matrix kept as the lower triangle, each row from its first entry that may differ from zero to the diagonal.
 * Factoring fills nothing in before that first entry, so a rig, whose parts touch few others, stays small.
 */
export class Envelope {
  readonly size: number;
  /** Column of the first kept entry of each row. */
  readonly first: Int32Array;
  /** Where column 0 of each row would lie in `values`: entry (row, column) is at `offset[row] + column`. */
  readonly offset: Int32Array;
  readonly values: Float64Array;

  constructor(first: ArrayLike<number>) {
    this.size = first.length;
    this.first = Int32Array.from(first);
    this.offset = new Int32Array(this.size);
    let used = 0;
    for (let row = 0; row < this.size; row++) {
      const from = this.first[row]!;
      if (from < 0 || from > row) throw new RangeError(`Row ${row} of an envelope begins at column ${from}; it must begin between 0 and ${row}.`);
      this.offset[row] = used - from;
      used += row - from + 1;
    }
    this.values = new Float64Array(used);
  }

  /** Adds to an entry of the lower triangle; its twin above the diagonal is the same number. */
  add(row: number, column: number, amount: number): void {
    if (column > row || column < this.first[row]!) throw new RangeError(`Entry (${row}, ${column}) is outside the envelope.`);
    this.values[this.offset[row]! + column]! += amount;
  }

  diagonal(row: number): number {
    return this.values[this.offset[row]! + row]!;
  }

  at(row: number, column: number): number {
    const [low, high] = row < column ? [row, column] : [column, row];
    return low < this.first[high]! ? 0 : this.values[this.offset[high]! + low]!;
  }

  /** The matrix times a vector. */
  times(x: Float64Array): Float64Array {
    const product = new Float64Array(this.size);
    for (let row = 0; row < this.size; row++) {
      const offset = this.offset[row]!;
      const here = x[row]!;
      let sum = this.values[offset + row]! * here;
      for (let column = this.first[row]!; column < row; column++) {
        const value = this.values[offset + column]!;
        sum += value * x[column]!;
        product[column]! += value * here;
      }
      product[row]! += sum;
    }
    return product;
  }
}
