import { invert } from './invert';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { max, min } = Math;

const TOLERANCE = 1e-9;
const PIVOT_TOLERANCE = 1e-8;
const REFACTOR_AFTER = 120;

/**
 * Primal simplex (revised, dense inverse) for min c·x, A·x ≥ b in the first rows, A·x ≤ b in the others, x ≥ 0, b ≥ 0.
 * Columns can be added at any time. Its answers are floating-point: no proof rests on them.
 */
export class Simplex {
  readonly rows: number;
  private readonly rhs: Float64Array;
  private readonly inverse: Float64Array;
  private readonly basis: Int32Array;
  private readonly values: Float64Array;
  private readonly cost: number[] = [];
  private readonly at: number[] = [0];
  private readonly row: number[] = [];
  private readonly entry: number[] = [];
  private readonly isBasic: boolean[] = [];
  private readonly extra: number;
  private readonly direction: Float64Array;
  private readonly filled: Int32Array;
  private y: Float64Array;
  private pivots = 0;

  /**
   * @param rhs right-hand sides, `cover` rows (≥) first
   * @param shortCost cost of leaving one unit of a ≥ row uncovered
   */
  constructor(
    rhs: readonly number[],
    private readonly cover: number,
    shortCost: readonly number[],
    private readonly work: Work,
  ) {
    const m = rhs.length;
    this.rows = m;
    // Slightly perturbed against cycling; the true right-hand side is used wherever a bound is computed.
    this.rhs = Float64Array.from(rhs, (b, i) => b + 1e-7 * (1 + ((i * 7919) % 101) / 101));
    for (let i = 0; i < cover; i++) this.add(shortCost[i]!, [i], [1]);
    for (let i = cover; i < m; i++) this.add(0, [i], [1]);
    for (let i = 0; i < cover; i++) this.add(0, [i], [-1]);
    this.extra = m + cover;
    this.inverse = new Float64Array(m * m);
    this.basis = new Int32Array(m);
    this.direction = new Float64Array(m);
    for (let i = 0; i < m; i++) {
      this.basis[i] = i;
      this.isBasic[i] = true;
      this.inverse[i * m + i] = 1;
    }
    this.values = this.rhs.slice();
    this.filled = new Int32Array(m);
    this.y = this.duals();
  }

  private add(cost: number, rows: readonly number[], entries: readonly number[]): number {
    this.cost.push(cost);
    for (let k = 0; k < rows.length; k++) {
      this.row.push(rows[k]!);
      this.entry.push(entries[k]!);
    }
    this.at.push(this.row.length);
    this.isBasic.push(false);
    return this.cost.length - 1;
  }

  /** Adds a column and returns its number, counted from 0. */
  addColumn(cost: number, rows: readonly number[], entries: readonly number[]): number {
    return this.add(cost, rows, entries) - this.extra;
  }

  /** The basis: below `rows` the short column of a ≥ row or the slack of a ≤ row, then `cover` surpluses, then the added columns. */
  get basicColumns(): readonly number[] {
    return [...this.basis];
  }

  /** Number that an added column has in `basicColumns`. */
  numberOf(column: number): number {
    return column + this.extra;
  }

  /** Starts from a basis; false where it cannot be used. */
  start(basis: readonly number[]): boolean {
    this.isBasic.fill(false);
    basis.forEach((column, i) => {
      this.basis[i] = column;
      this.isBasic[column] = true;
    });
    if (!this.refactor()) return false;
    this.y = this.duals();
    return this.values.every(value => value > -1e-5);
  }

  /** Duals of the present basis. */
  duals(): Float64Array {
    const m = this.rows;
    const y = new Float64Array(m);
    for (let i = 0; i < m; i++) {
      const c = this.cost[this.basis[i]!]!;
      if (c !== 0) for (let j = 0, p = i * m; j < m; j++, p++) y[j]! += c * this.inverse[p]!;
    }
    return y;
  }

  /** Values of the added columns that are not 0, as [column, value]; and what stays uncovered. */
  solution(): { columns: [number, number][]; short: number } {
    const columns: [number, number][] = [];
    let short = 0;
    for (let i = 0; i < this.rows; i++) {
      const column = this.basis[i]!;
      const value = this.values[i]!;
      if (column >= this.extra && value > 1e-5) columns.push([column - this.extra, value]);
      if (column < this.cover) short += max(0, value - 1e-5);
    }
    return { columns: columns.sort((a, b) => a[0] - b[0]), short };
  }

  /** Objective of the present basis. */
  objective(): number {
    let total = 0;
    for (let i = 0; i < this.rows; i++) total += this.cost[this.basis[i]!]! * this.values[i]!;
    return total;
  }

  /** Works the inverse of the basis out anew, against rounding errors that add up. */
  private refactor(): boolean {
    const m = this.rows;
    const matrix = new Float64Array(m * m);
    for (let j = 0; j < m; j++) {
      const column = this.basis[j]!;
      for (let k = this.at[column]!; k < this.at[column + 1]!; k++) matrix[this.row[k]! * m + j] = this.entry[k]!;
    }
    if (!invert(matrix, this.inverse, m, this.work)) return false;
    for (let i = 0; i < m; i++) {
      let value = 0;
      for (let k = 0; k < m; k++) value += this.inverse[i * m + k]! * this.rhs[k]!;
      this.values[i] = value;
    }
    return true;
  }

  private entering(isBland: boolean): { column: number; reduced: number } | undefined {
    const y = this.y;
    let best = -1;
    let bestReduced = 0;
    for (let j = this.cover; j < this.cost.length; j++) {
      if (this.isBasic[j]) continue;
      const cost = this.cost[j]!;
      let reduced = cost;
      for (let k = this.at[j]!; k < this.at[j + 1]!; k++) reduced -= y[this.row[k]!]! * this.entry[k]!;
      if (reduced < bestReduced && reduced < -TOLERANCE * (1 + cost)) {
        if (isBland) return { column: j, reduced };
        bestReduced = reduced;
        best = j;
      }
    }
    this.work.spendFlops(2 * this.row.length);
    return best < 0 ? undefined : { column: best, reduced: bestReduced };
  }

  private leaving(): number {
    const d = this.direction;
    let least = Infinity;
    for (let i = 0; i < this.rows; i++) {
      if (d[i]! > PIVOT_TOLERANCE) least = min(least, (max(0, this.values[i]!) + TOLERANCE) / d[i]!);
    }
    let best = -1;
    for (let i = 0; i < this.rows; i++) {
      if (d[i]! > PIVOT_TOLERANCE && max(0, this.values[i]!) / d[i]! <= least && (best < 0 || d[i]! > d[best]!)) best = i;
    }
    return best;
  }

  private pivot(entering: number, leaving: number, reduced: number): void {
    const m = this.rows;
    const d = this.direction;
    const step = max(0, this.values[leaving]!) / d[leaving]!;
    const from = leaving * m;
    const inverse = this.inverse;
    // The pivot row is mostly zeros for long: only its other columns are touched.
    let filled = 0;
    for (let k = 0; k < m; k++) {
      if (inverse[from + k] !== 0) {
        inverse[from + k]! /= d[leaving]!;
        this.filled[filled++] = k;
      }
    }
    let rows = 0;
    for (let i = 0; i < m; i++) {
      const factor = d[i]!;
      if (i === leaving || factor === 0) continue;
      rows++;
      this.values[i]! -= step * factor;
      for (let f = 0, p = i * m; f < filled; f++) inverse[p + this.filled[f]!]! -= factor * inverse[from + this.filled[f]!]!;
    }
    // The duals move along the new pivot row.
    for (let f = 0; f < filled; f++) this.y[this.filled[f]!]! += reduced * inverse[from + this.filled[f]!]!;
    this.values[leaving] = step;
    this.isBasic[this.basis[leaving]!] = false;
    this.isBasic[entering] = true;
    this.basis[leaving] = entering;
    this.work.spendFlops(2 * rows * filled + 8 * m);
  }

  /** Pivots until optimal over the columns added so far. False where the pivot limit, a bad pivot or the end of the work ended it. */
  solve(limit = 20_000): boolean {
    const m = this.rows;
    for (let count = 0; count < limit; count++) {
      if (this.work.over) return false;
      if (this.pivots >= REFACTOR_AFTER) {
        if (!this.refactor()) return false;
        this.y = this.duals();
        this.pivots = 0;
      }
      const found = this.entering(count > limit / 2);
      if (!found) return true;
      const entering = found.column;
      const d = this.direction.fill(0);
      for (let k = this.at[entering]!; k < this.at[entering + 1]!; k++) {
        const [r, e] = [this.row[k]!, this.entry[k]!];
        for (let i = 0, p = r; i < m; i++, p += m) d[i]! += e * this.inverse[p]!;
      }
      const leaving = this.leaving();
      if (leaving < 0) return false;
      this.pivot(entering, leaving, found.reduced);
      this.pivots++;
    }
    return false;
  }
}
