/** Columns of a sparse matrix, one behind the other; they grow as needed. */
export class SparseColumns {
  count = 0;
  /** Where each column begins in `rows` and `entries`; the last one ends at `starts[count]`. */
  starts = new Int32Array(64);
  rows = new Int32Array(256);
  entries = new Float64Array(256);
  /** Entries of all columns. */
  filled = 0;

  /** Adds an entry to the column that is being filled. */
  put(row: number, entry: number): void {
    if (this.filled === this.rows.length) {
      this.rows = grown(this.rows, new Int32Array(2 * this.filled));
      this.entries = grown(this.entries, new Float64Array(2 * this.filled));
    }
    this.rows[this.filled] = row;
    this.entries[this.filled++] = entry;
  }

  /** Ends the column that is being filled and gives its number. */
  close(): number {
    if (this.count + 2 > this.starts.length) this.starts = grown(this.starts, new Int32Array(2 * this.starts.length));
    this.starts[this.count + 1] = this.filled;
    return this.count++;
  }

  /** Forgets all columns. */
  clear(): void {
    this.count = 0;
    this.filled = 0;
  }

  /** Takes `factor` times a column off x. */
  takeOff(column: number, factor: number, x: Float64Array): void {
    if (factor === 0) return;
    const { rows, entries } = this;
    for (let k = this.starts[column]!, end = this.starts[column + 1]!; k < end; k++) x[rows[k]!]! -= factor * entries[k]!;
  }

  /** Scalar product of a column and y. */
  product(column: number, y: Float64Array): number {
    const { rows, entries } = this;
    let sum = 0;
    for (let k = this.starts[column]!, end = this.starts[column + 1]!; k < end; k++) sum += entries[k]! * y[rows[k]!]!;
    return sum;
  }
}

/** The list in a larger one. */
export function grown<T extends Int32Array | Float64Array | Uint8Array>(list: T, larger: T): T {
  larger.set(list);
  return larger;
}
