import { max } from '../arithmetic';
import { dualSimplex, isFeasible } from './dualSimplex';
import { primalSimplex } from './primalSimplex';
import { Tableau } from './tableau';
import type { Work } from './work';

const MOST_PIVOTS = 20_000;

/**
 * Simplex method for min c·x, A·x ≥ b in the first rows, A·x ≤ b in the others, x ≥ 0, b ≥ 0. Columns can be added at any time.
 * Its answers are floating-point: no proof rests on them.
 */
export class Simplex {
  readonly rows: number;
  private readonly tableau: Tableau;
  private readonly extra: number;

  /**
   * @param rhs right-hand sides, `cover` rows (≥) first
   * @param shortCost cost of leaving one unit of a ≥ row uncovered
   */
  constructor(
    rhs: readonly number[],
    private readonly cover: number,
    shortCost: number,
    work: Work,
  ) {
    const m = rhs.length;
    this.rows = m;
    this.extra = m + cover;
    this.tableau = new Tableau(new Float64Array(m), work);
    for (let i = 0; i < m; i++) this.tableau.add(i < cover ? shortCost : 0, [i], [1]);
    for (let i = 0; i < cover; i++) this.tableau.add(0, [i], [-1]);
    this.setRhs(rhs);
    this.tableau.start(this.shortBasis);
  }

  /** Nothing covered, nothing used. */
  private get shortBasis(): number[] {
    return Array.from({ length: this.rows }, (_, i) => i);
  }

  private setRhs(rhs: readonly number[]): void {
    // Slightly perturbed against cycling; the true right-hand side is used wherever a bound is computed.
    for (let i = 0; i < rhs.length; i++) this.tableau.rhs[i] = rhs[i]! + 1e-7 * (1 + ((i * 7919) % 101) / 101);
  }

  /** Takes other right-hand sides and keeps the basis. */
  changeRhs(rhs: readonly number[]): void {
    this.setRhs(rhs);
    this.tableau.revalue();
  }

  /** Adds a column and returns its number, counted from 0. */
  addColumn(cost: number, rows: readonly number[], entries: readonly number[]): number {
    return this.tableau.add(cost, rows, entries) - this.extra;
  }

  /** Forbids a column. */
  ban(column: number): void {
    this.tableau.isBanned[column + this.extra] = 1;
  }

  /** The basis: below `rows` the short column of a ≥ row or the slack of a ≤ row, then `cover` surpluses, then the added columns. */
  get basicColumns(): readonly number[] {
    return [...this.tableau.basis];
  }

  /** Number that an added column has in `basicColumns`. */
  numberOf(column: number): number {
    return column + this.extra;
  }

  /** Starts from a basis; false where it cannot be used and nothing is covered instead. */
  start(basis: readonly number[]): boolean {
    if (this.tableau.start(basis)) return true;
    this.tableau.start(this.shortBasis);
    return false;
  }

  /** Duals of the present basis. */
  duals(): Float64Array {
    return this.tableau.duals();
  }

  /** Values of the added columns that are not 0, as [column, value]; and what stays uncovered. */
  solution(): { columns: [number, number][]; short: number } {
    const { basis, values } = this.tableau;
    const columns: [number, number][] = [];
    let short = 0;
    for (let i = 0; i < this.rows; i++) {
      const column = basis[i]!;
      const value = values[i]!;
      if (column >= this.extra && value > 1e-5) columns.push([column - this.extra, value]);
      if (column < this.cover) short += max(0, value - 1e-5);
    }
    return { columns: columns.sort((a, b) => a[0] - b[0]), short };
  }

  /** Objective of the present basis. */
  objective(): number {
    return this.tableau.objective;
  }

  /**
   * Solves over the columns added so far, from the last basis.
   * @param enough ends it once no solution costs less
   * @returns false where the limit of pivots, a bad pivot or the end of the work ended it
   */
  solve(enough = Infinity): boolean {
    const { tableau } = this;
    if (!isFeasible(tableau)) {
      // Rounding errors may leave it no way: then all rows are uncovered again, which is never infeasible.
      if (!dualSimplex(tableau, enough, MOST_PIVOTS) && (tableau.work.over || !tableau.start(this.shortBasis))) return false;
      if (!isFeasible(tableau)) return true;
    }
    tableau.price();
    return primalSimplex(tableau, MOST_PIVOTS);
  }
}
