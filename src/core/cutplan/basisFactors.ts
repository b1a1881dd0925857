import { factorBasis } from './factorBasis';
import { SparseColumns } from './sparseColumns';
import type { Work } from './work';

/** Columns exchanged until the basis is factored anew, and the entries that they may add for each row until then. */
const MOST_EXCHANGES = 100;
const ENTRIES_A_ROW = 15;

/**
 * A basis as sparse triangular factors and a short list of exchanges since (product form): solves B·x = a and y·B = c. Every column stands
 * at the row of its pivot, so that places in the basis and rows are the same.
 */
export class BasisFactors {
  readonly lower = new SparseColumns();
  readonly upper = new SparseColumns();
  /** Rows in the order of their pivots. */
  readonly order: Int32Array;
  readonly pivots: Float64Array;
  private readonly exchanges = new SparseColumns();
  private readonly places: number[] = [];
  private readonly placePivots: number[] = [];

  constructor(
    readonly size: number,
    private readonly work: Work,
  ) {
    this.order = new Int32Array(size);
    this.pivots = new Float64Array(size);
  }

  /**
   * Factors a basis.
   * @param basis its columns, brought into the order of their pivot rows
   * @returns false where the basis is singular
   */
  factor(columns: SparseColumns, basis: Int32Array): boolean {
    this.exchanges.clear();
    this.places.length = 0;
    this.placePivots.length = 0;
    return factorBasis(columns, basis, this, this.work);
  }

  /** True where so much was exchanged that factoring anew is better. */
  get isLong(): boolean {
    return this.places.length >= MOST_EXCHANGES || this.exchanges.filled > ENTRIES_A_ROW * this.size;
  }

  /** Takes the column whose solution is `direction` into the basis, at a place. */
  exchange(place: number, direction: Float64Array): void {
    for (let i = 0; i < direction.length; i++) if (i !== place && direction[i] !== 0) this.exchanges.put(i, direction[i]!);
    this.exchanges.close();
    this.places.push(place);
    this.placePivots.push(direction[place]!);
  }

  /** Turns a into the solution of B·x = a. */
  solve(x: Float64Array): void {
    const { order, pivots, lower, upper } = this;
    for (let k = 0; k < order.length; k++) lower.takeOff(k, x[order[k]!]!, x);
    for (let k = order.length - 1; k >= 0; k--) {
      const row = order[k]!;
      if (x[row] === 0) continue;
      x[row]! /= pivots[k]!;
      upper.takeOff(k, x[row]!, x);
    }
    for (let k = 0; k < this.places.length; k++) {
      const place = this.places[k]!;
      if (x[place] === 0) continue;
      x[place]! /= this.placePivots[k]!;
      this.exchanges.takeOff(k, x[place]!, x);
    }
    this.count();
  }

  /** Turns c into the solution of y·B = c. */
  solveTransposed(y: Float64Array): void {
    const { order, pivots, lower, upper } = this;
    for (let k = this.places.length - 1; k >= 0; k--) {
      const place = this.places[k]!;
      y[place] = (y[place]! - this.exchanges.product(k, y)) / this.placePivots[k]!;
    }
    for (let k = 0; k < order.length; k++) y[order[k]!] = (y[order[k]!]! - upper.product(k, y)) / pivots[k]!;
    for (let k = order.length - 1; k >= 0; k--) y[order[k]!]! -= lower.product(k, y);
    this.count();
  }

  private count(): void {
    this.work.spendFlops(2 * this.size + this.lower.filled + this.upper.filled + this.exchanges.filled);
  }
}
