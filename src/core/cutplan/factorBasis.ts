import { abs, max } from '../arithmetic';
import type { SparseColumns } from './sparseColumns';
import type { Work } from './work';

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
  /** Places in the basis without a pivot, the shortest columns first. */
  private places: number[];
  /** By row: columns without a pivot that have an entry there. */
  private readonly rowLeft: Int32Array;
  private readonly isRowDone: Uint8Array;
  private readonly sorted: Int32Array;
  /** The column at hand. */
  private readonly x: Float64Array;
  private done = 0;

  constructor(
    private readonly columns: SparseColumns,
    private readonly basis: Int32Array,
    private readonly factors: Factors,
  ) {
    const { size } = factors;
    const { starts, rows } = columns;
    this.rowLeft = new Int32Array(size);
    this.isRowDone = new Uint8Array(size);
    this.sorted = new Int32Array(size);
    this.x = new Float64Array(size);
    for (const column of basis) for (let k = starts[column]!; k < starts[column + 1]!; k++) this.rowLeft[rows[k]!]!++;
    const lengthAt = (place: number) => starts[basis[place]! + 1]! - starts[basis[place]!]!;
    this.places = Array.from(basis, (_, place) => place).sort((a, b) => lengthAt(a) - lengthAt(b) || a - b);
  }

  /** Columns that have one row left are pivots that fill nothing in. */
  singles(): void {
    const { starts, rows, entries } = this.columns;
    for (let before = -1; before < this.done;) {
      before = this.done;
      this.places = this.places.filter(place => {
        const column = this.basis[place]!;
        const end = starts[column + 1]!;
        let own = -1;
        for (let k = starts[column]!; k < end; k++) {
          if (this.isRowDone[rows[k]!]) continue;
          if (own >= 0) return true;
          own = k;
        }
        if (own < 0) return true;
        for (let k = starts[column]!; k < end; k++) {
          this.rowLeft[rows[k]!]!--;
          if (k !== own) this.factors.upper.put(rows[k]!, entries[k]!);
        }
        this.close(rows[own]!, place, entries[own]!);
        return false;
      });
    }
  }

  private close(row: number, place: number, pivot: number): void {
    const { lower, upper, order, pivots } = this.factors;
    lower.close();
    upper.close();
    order[this.done] = row;
    pivots[this.done++] = pivot;
    this.isRowDone[row] = 1;
    this.sorted[row] = this.basis[place]!;
  }

  /** All other columns; false where one depends on others. */
  others(work: Work): boolean {
    const { starts, rows, entries } = this.columns;
    const { lower, order, size } = this.factors;
    const first = this.done;
    for (const place of this.places) {
      const column = this.basis[place]!;
      for (let k = starts[column]!; k < starts[column + 1]!; k++) {
        this.x[rows[k]!] = entries[k]!;
        this.rowLeft[rows[k]!]!--;
      }
      for (let k = first; k < this.done; k++) lower.takeOff(k, this.x[order[k]!]!, this.x);
      if (work.stopped || !this.other(place)) return false;
      work.spendFlops(3 * size + this.done - first);
    }
    this.basis.set(this.sorted);
    return true;
  }

  /** Makes a pivot of the column in x: a large entry of a short row. */
  private other(place: number): boolean {
    const { x, isRowDone } = this;
    const { lower, upper } = this.factors;
    let largest = 0;
    for (let row = 0; row < x.length; row++) if (!isRowDone[row]) largest = max(largest, abs(x[row]!));
    if (largest < SMALLEST_PIVOT) return false;
    let best = -1;
    for (let row = 0; row < x.length; row++) {
      if (isRowDone[row] || abs(x[row]!) < PIVOT_SHARE * largest) continue;
      if (best < 0 || this.rowLeft[row]! < this.rowLeft[best]!) best = row;
    }
    const pivot = x[best]!;
    for (let row = 0; row < x.length; row++) {
      const entry = x[row]!;
      x[row] = 0;
      if (row === best || abs(entry) <= NOTHING) continue;
      if (isRowDone[row]) upper.put(row, entry);
      else lower.put(row, entry / pivot);
    }
    this.close(best, place, pivot);
    return true;
  }
}

/**
 * Factors a basis into triangular matrices: first the columns that have one row left, which fills nothing in, then what remains, the
 * shortest columns first.
 * @param basis its columns; they get the places of their pivot rows
 * @returns false where the basis is singular, or the work was stopped
 */
export function factorBasis(columns: SparseColumns, basis: Int32Array, factors: Factors, work: Work): boolean {
  factors.lower.clear();
  factors.upper.clear();
  const factoring = new Factoring(columns, basis, factors);
  factoring.singles();
  if (!factoring.others(work)) return false;
  work.spendFlops(4 * factors.lower.filled + 4 * factors.upper.filled + 10 * factors.size);
  return true;
}
