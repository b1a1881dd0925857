import type { Pattern } from './gridProblem';
import type { ExtraRow, RowEntries } from './masterRows';

/** A further row of a program over the pool: Σ entry · times ≥ demand. */
export interface PoolRow extends ExtraRow {
  /** The patterns that count, by their number in the pool, ascending, and how much each does. */
  readonly patterns: readonly number[];
  readonly entries: readonly number[];
}

/** A row of all patterns that count. */
export function poolRow(
  key: string,
  demand: number,
  pool: readonly Pattern[],
  entryOf: (pattern: Pattern, number: number) => number,
): PoolRow {
  const patterns: number[] = [];
  const entries: number[] = [];
  pool.forEach((pattern, number) => {
    const entry = entryOf(pattern, number);
    if (entry <= 0) return;
    patterns.push(number);
    entries.push(entry);
  });
  return { key, demand, patterns, entries };
}

/** The same rows by pattern: which rows a pattern counts in. */
export class RowsByPattern {
  private readonly starts: Int32Array;
  private readonly row: Int32Array;
  private readonly entry: Float64Array;

  constructor(rows: readonly PoolRow[], size: number) {
    this.starts = new Int32Array(size + 1);
    for (const { patterns } of rows) for (const number of patterns) this.starts[number + 1]!++;
    for (let k = 0; k < size; k++) this.starts[k + 1]! += this.starts[k]!;
    this.row = new Int32Array(this.starts[size]!);
    this.entry = new Float64Array(this.starts[size]!);
    const next = this.starts.slice(0, size);
    rows.forEach(({ patterns, entries }, row) => {
      patterns.forEach((number, k) => {
        const at = next[number]!++;
        this.row[at] = row;
        this.entry[at] = entries[k]!;
      });
    });
  }

  /** What the duals of the rows pay for a pattern. */
  worth(number: number, duals: ArrayLike<number>): number {
    let sum = 0;
    for (let k = this.starts[number]!; k < this.starts[number + 1]!; k++) sum += this.entry[k]! * duals[this.row[k]!]!;
    return sum;
  }

  /** The rows that a pattern counts in, and how much. */
  of(number: number): RowEntries {
    const [from, to] = [this.starts[number]!, this.starts[number + 1]!];
    return { rows: this.row.subarray(from, to), entries: this.entry.subarray(from, to) };
  }
}
