import type { SparseColumns } from './sparseColumns';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { abs, max } = Math;

const SMALLEST_PIVOT = 1e-9;
/** A pivot may be so much smaller than the largest of its column, where its row is shorter. */
const PIVOT_SHARE = 0.1;
/** What is smaller is a rounding error. */
const NOTHING = 1e-14;

/** Where the factors go: lower and upper columns, rows in the order of their pivots, and the pivots. */
export interface Factors {
  readonly size: number;
  readonly lower: SparseColumns;
  readonly upper: SparseColumns;
  readonly order: Int32Array;
  readonly pivots: Float64Array;
}

/** A basis while it is being factored. */
class Factoring {
  /** By place: entries in rows that have no pivot yet. */
  private readonly columnLeft: Int32Array;
  /** By row: columns that have no pivot yet. */
  private readonly rowLeft: Int32Array;
  private readonly rowStarts: Int32Array;
  private readonly rowPlaces: Int32Array;
  private readonly isRowDone: Uint8Array;
  private readonly isPlaceDone: Uint8Array;
  private readonly sorted: Int32Array;
  private readonly x: Float64Array;
  private done = 0;

  constructor(
    private readonly columns: SparseColumns,
    private readonly basis: Int32Array,
    private readonly factors: Factors,
  ) {
    const { size } = factors;
    const { starts, rows } = columns;
    this.columnLeft = new Int32Array(size);
    this.rowLeft = new Int32Array(size);
    this.rowStarts = new Int32Array(size + 1);
    this.isRowDone = new Uint8Array(size);
    this.isPlaceDone = new Uint8Array(size);
    this.sorted = new Int32Array(size);
    this.x = new Float64Array(size);
    for (let place = 0; place < size; place++) {
      const column = basis[place]!;
      this.columnLeft[place] = starts[column + 1]! - starts[column]!;
      for (let k = starts[column]!; k < starts[column + 1]!; k++) this.rowLeft[rows[k]!]!++;
    }
    for (let row = 0; row < size; row++) this.rowStarts[row + 1] = this.rowStarts[row]! + this.rowLeft[row]!;
    this.rowPlaces = new Int32Array(this.rowStarts[size]!);
    const next = this.rowStarts.slice();
    for (let place = 0; place < size; place++) {
      const column = basis[place]!;
      for (let k = starts[column]!; k < starts[column + 1]!; k++) this.rowPlaces[next[rows[k]!]!++] = place;
    }
  }

  /** Columns and rows that have one entry left are pivots that fill nothing in. */
  singles(): void {
    const { starts, rows } = this.columns;
    const shortColumns: number[] = [];
    const shortRows: number[] = [];
    for (let k = 0; k < this.x.length; k++) {
      if (this.columnLeft[k] === 1) shortColumns.push(k);
      if (this.rowLeft[k] === 1) shortRows.push(k);
    }
    while (shortColumns.length > 0 || shortRows.length > 0) {
      let row = -1;
      let place = -1;
      if (shortColumns.length > 0) {
        place = shortColumns.pop()!;
        if (this.isPlaceDone[place]) continue;
        const column = this.basis[place]!;
        for (let k = starts[column]!; k < starts[column + 1]!; k++) if (!this.isRowDone[rows[k]!]) row = rows[k]!;
      } else {
        row = shortRows.pop()!;
        if (this.isRowDone[row]) continue;
        for (let k = this.rowStarts[row]!; k < this.rowStarts[row + 1]!; k++) {
          if (!this.isPlaceDone[this.rowPlaces[k]!]) place = this.rowPlaces[k]!;
        }
      }
      if (row < 0 || place < 0) return;
      this.single(row, place);
      const column = this.basis[place]!;
      for (let k = starts[column]!; k < starts[column + 1]!; k++) {
        if (--this.rowLeft[rows[k]!]! === 1 && !this.isRowDone[rows[k]!]) shortRows.push(rows[k]!);
      }
      for (let k = this.rowStarts[row]!; k < this.rowStarts[row + 1]!; k++) {
        const other = this.rowPlaces[k]!;
        if (--this.columnLeft[other]! === 1 && !this.isPlaceDone[other]) shortColumns.push(other);
      }
    }
  }

  private single(row: number, place: number): void {
    const { starts, rows, entries } = this.columns;
    const column = this.basis[place]!;
    const [from, end] = [starts[column]!, starts[column + 1]!];
    let pivot = 1;
    for (let k = from; k < end; k++) if (rows[k] === row) pivot = entries[k]!;
    for (let k = from; k < end; k++) if (rows[k] !== row) this.divide(rows[k]!, entries[k]!, pivot);
    this.close(row, place, pivot);
  }

  private divide(row: number, entry: number, pivot: number): void {
    if (this.isRowDone[row]) this.factors.upper.put(row, entry);
    else this.factors.lower.put(row, entry / pivot);
  }

  private close(row: number, place: number, pivot: number): void {
    const { lower, upper, order, pivots } = this.factors;
    lower.close();
    upper.close();
    order[this.done] = row;
    pivots[this.done++] = pivot;
    this.isRowDone[row] = 1;
    this.isPlaceDone[place] = 1;
    this.sorted[row] = this.basis[place]!;
  }

  /** All other columns, the shortest first; false where one depends on others. */
  others(work: Work): boolean {
    const { starts, rows, entries } = this.columns;
    const { lower, order, size } = this.factors;
    const first = this.done;
    const places: number[] = [];
    for (let place = 0; place < size; place++) if (!this.isPlaceDone[place]) places.push(place);
    places.sort((a, b) => this.columnLeft[a]! - this.columnLeft[b]! || a - b);
    for (const place of places) {
      const column = this.basis[place]!;
      for (let k = starts[column]!; k < starts[column + 1]!; k++) {
        this.x[rows[k]!] = entries[k]!;
        this.rowLeft[rows[k]!]!--;
      }
      for (let k = first; k < this.done; k++) lower.takeOff(k, this.x[order[k]!]!, this.x);
      if (work.stopped || !this.other(place)) return false;
      work.spendFlops(3 * size + this.done - first);
    }
    return true;
  }

  /** Makes a pivot of the column in x: a large entry of a short row. */
  private other(place: number): boolean {
    const { x } = this;
    let largest = 0;
    for (let row = 0; row < x.length; row++) if (!this.isRowDone[row]) largest = max(largest, abs(x[row]!));
    if (largest < SMALLEST_PIVOT) return false;
    let best = -1;
    for (let row = 0; row < x.length; row++) {
      if (this.isRowDone[row] || abs(x[row]!) < PIVOT_SHARE * largest) continue;
      if (best < 0 || this.rowLeft[row]! < this.rowLeft[best]!) best = row;
    }
    const pivot = x[best]!;
    for (let row = 0; row < x.length; row++) {
      if (row !== best && abs(x[row]!) > NOTHING) this.divide(row, x[row]!, pivot);
      x[row] = 0;
    }
    this.close(best, place, pivot);
    return true;
  }

  finish(): void {
    this.basis.set(this.sorted);
  }
}

/**
 * Factors a basis into triangular matrices: first the columns and rows that have one entry left, which fills nothing in, then what
 * remains, the shortest columns first.
 * @param basis its columns; they get the places of their pivot rows
 * @returns false where the basis is singular, or the work was stopped
 */
export function factorBasis(columns: SparseColumns, basis: Int32Array, factors: Factors, work: Work): boolean {
  factors.lower.clear();
  factors.upper.clear();
  const factoring = new Factoring(columns, basis, factors);
  factoring.singles();
  if (!factoring.others(work)) return false;
  factoring.finish();
  work.spendFlops(4 * factors.lower.filled + 4 * factors.upper.filled + 10 * factors.size);
  return true;
}
