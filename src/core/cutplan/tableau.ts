import { BasisFactors } from './basisFactors';
import { grown, SparseColumns } from './sparseColumns';
import type { Work } from './work';

/** What is smaller counts as 0: in values of columns, and in reduced costs beside the cost. */
export const TOLERANCE = 1e-9;
/** Entries smaller than this are no pivots. */
export const LEAST_PIVOT = 1e-8;

/** A linear program min c·x, A·x = b, x ≥ 0 at one of its bases: what both ways of the simplex method go on from. */
export class Tableau {
  readonly columns = new SparseColumns();
  readonly basis: Int32Array;
  /** Values of the basis. */
  readonly values: Float64Array;
  /** Solution of B·d = entering column. */
  readonly direction: Float64Array;
  cost = new Float64Array(64);
  isBasic = new Uint8Array(64);
  /** Columns that must be 0: they leave the basis and never come in. */
  isBanned = new Uint8Array(64);
  /** Cost less what the duals pay. */
  reduced = new Float64Array(64);
  /** Entries of one row of B⁻¹·A. */
  rowEntries = new Float64Array(64);
  private readonly factors: BasisFactors;
  private readonly rowDuals: Float64Array;

  constructor(
    readonly rhs: Float64Array,
    readonly work: Work,
  ) {
    const rows = rhs.length;
    this.basis = new Int32Array(rows);
    this.values = new Float64Array(rows);
    this.direction = new Float64Array(rows);
    this.rowDuals = new Float64Array(rows);
    this.factors = new BasisFactors(rows, work);
  }

  /** Adds a column and gives its number. */
  add(cost: number, rows: ArrayLike<number>, entries: ArrayLike<number>): number {
    for (let k = 0; k < rows.length; k++) this.columns.put(rows[k]!, entries[k]!);
    const column = this.columns.close();
    if (column === this.cost.length) {
      const size = 2 * column;
      this.cost = grown(this.cost, new Float64Array(size));
      this.isBasic = grown(this.isBasic, new Uint8Array(size));
      this.isBanned = grown(this.isBanned, new Uint8Array(size));
      this.reduced = grown(this.reduced, new Float64Array(size));
      this.rowEntries = grown(this.rowEntries, new Float64Array(size));
    }
    this.cost[column] = cost;
    return column;
  }

  /** Takes a basis; false where it is singular. */
  start(basis: ArrayLike<number>): boolean {
    this.basis.set(basis);
    this.isBasic.fill(0);
    for (const column of this.basis) this.isBasic[column] = 1;
    return this.refactor();
  }

  /** True where so many columns were exchanged that the factors should be worked out anew. */
  get isStale(): boolean {
    return this.factors.isLong;
  }

  /** Works factors and values out anew, against rounding errors that add up. */
  refactor(): boolean {
    if (!this.factors.factor(this.columns, this.basis)) return false;
    this.revalue();
    return true;
  }

  /** Works the values out from the right-hand side. */
  revalue(): void {
    this.values.set(this.rhs);
    this.factors.solve(this.values);
  }

  duals(): Float64Array {
    const y = Float64Array.from(this.basis, column => this.cost[column]!);
    this.factors.solveTransposed(y);
    return y;
  }

  /** Works the reduced costs out from the duals. */
  price(): void {
    const y = this.duals();
    for (let j = 0; j < this.columns.count; j++) {
      this.reduced[j] = this.isBasic[j] ? 0 : this.cost[j]! - this.columns.product(j, y);
    }
    this.work.spendFlops(2 * this.columns.filled);
  }

  get objective(): number {
    let total = 0;
    for (let i = 0; i < this.basis.length; i++) total += this.cost[this.basis[i]!]! * this.values[i]!;
    return total;
  }

  /** Works out `direction` for an entering column. */
  aim(entering: number): void {
    this.direction.fill(0);
    this.columns.takeOff(entering, -1, this.direction);
    this.factors.solve(this.direction);
  }

  /** Works out `rowEntries` of one row. */
  readRow(row: number): void {
    const { columns, rowDuals, isBasic, rowEntries } = this;
    rowDuals.fill(0);
    rowDuals[row] = 1;
    this.factors.solveTransposed(rowDuals);
    for (let j = 0, n = columns.count; j < n; j++) rowEntries[j] = isBasic[j] ? 0 : columns.product(j, rowDuals);
    this.work.spendFlops(2 * columns.filled);
  }

  /** Exchanges the column of a row for another, once `direction` and `rowEntries` are worked out. */
  exchange(row: number, entering: number): void {
    const { direction, values, reduced, rowEntries, basis, isBasic } = this;
    const leaving = basis[row]!;
    const step = values[row]! / direction[row]!;
    for (let i = 0; i < values.length; i++) if (direction[i] !== 0) values[i]! -= step * direction[i]!;
    values[row] = step;
    const change = reduced[entering]! / direction[row]!;
    if (change !== 0) {
      for (let j = 0, n = this.columns.count; j < n; j++) if (rowEntries[j] !== 0) reduced[j]! -= change * rowEntries[j]!;
    }
    reduced[entering] = 0;
    reduced[leaving] = -change;
    this.factors.exchange(row, direction);
    isBasic[leaving] = 0;
    isBasic[entering] = 1;
    basis[row] = entering;
  }
}
