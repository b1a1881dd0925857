import { lossOf, patternKey, type GridProblem, type Pattern } from './gridProblem';
import { Simplex } from './simplex';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { max, min } = Math;

/** The pattern cut down to what is still wanted; undefined where nothing of it is, or the stock is used up. */
export function clipped(problem: GridProblem, pattern: Pattern): Pattern | undefined {
  const { demand, stock, widths } = problem;
  if (stock[pattern.stock]!.count <= 0) return undefined;
  if (pattern.items.every((item, k) => pattern.counts[k]! <= demand[item]!)) return pattern;
  const counts = pattern.items.map((item, k) => min(pattern.counts[k]!, demand[item]!));
  const items = pattern.items.filter((_, k) => counts[k]! > 0);
  if (items.length === 0) return undefined;
  const left = counts.filter(count => count > 0);
  const width = items.reduce((sum, item, k) => sum + left[k]! * widths[item]!, 0);
  return { stock: pattern.stock, items, counts: left, width, loss: lossOf(stock[pattern.stock]!, width) };
}

/** What leaving out one piece costs in the linear program, so that it does so only where it must. */
export function shortCost(problem: GridProblem): number {
  return 10 * max(1, ...problem.stock.map(stock => stock.whole));
}

/** A further row: Σ coefficient · times ≥ demand. */
export interface ExtraRow {
  /** Equal rows of different programs have equal keys. */
  readonly key: string;
  readonly demand: number;
  coefficient(pattern: Pattern): number;
}

/** A basis that another program may start from: patterns, and logical columns by their row. */
export interface Basis {
  readonly rows: ReadonlySet<string>;
  readonly columns: readonly (Pattern | { readonly kind: 'own' | 'surplus'; readonly row: string })[];
}

/** The linear program over the patterns known so far. */
export class Master {
  readonly patterns: Pattern[] = [];
  private readonly keys = new Map<string, number>();
  private readonly rowKeys: readonly string[];
  private readonly cover: number;
  private readonly itemRow: Int32Array;
  private readonly stockRow: Int32Array;
  private readonly firstExtra: number;
  private readonly simplex: Simplex;

  constructor(
    readonly problem: GridProblem,
    start: Iterable<Pattern>,
    work: Work,
    private readonly extra: readonly ExtraRow[] = [],
  ) {
    const { demand, stock } = problem;
    const rhs: number[] = [];
    this.itemRow = Int32Array.from(demand, d => (d > 0 ? rhs.push(d) - 1 : -1));
    this.firstExtra = rhs.length;
    for (const row of extra) rhs.push(row.demand);
    const cover = rhs.length;
    this.cover = cover;
    this.stockRow = Int32Array.from(stock, one => (one.count > 0 && !one.unlimited ? rhs.push(one.count) - 1 : -1));
    this.simplex = new Simplex(rhs, cover, new Array<number>(cover).fill(shortCost(problem)), work);
    this.rowKeys = [
      ...demand.flatMap((d, item) => (d > 0 ? [`item ${item}`] : [])),
      ...extra.map(row => row.key),
      ...stock.flatMap((_, t) => (this.stockRow[t]! >= 0 ? [`stock ${t}`] : [])),
    ];
    for (const pattern of start) this.add(pattern);
  }

  /**
   * Adds a pattern (cut down to the demand) unless it is known.
   * @param penalty added to its loss, for a pattern that must leave
   */
  add(pattern: Pattern, penalty = 0): boolean {
    const fitting = clipped(this.problem, pattern);
    if (!fitting) return false;
    const key = patternKey(fitting);
    if (this.keys.has(key)) return false;
    this.keys.set(key, this.patterns.push(fitting) - 1);
    const rows = fitting.items.map(item => this.itemRow[item]!);
    const entries = [...fitting.counts];
    if (this.stockRow[fitting.stock]! >= 0) {
      rows.push(this.stockRow[fitting.stock]!);
      entries.push(1);
    }
    this.extra.forEach((row, k) => {
      const entry = row.coefficient(fitting);
      if (entry > 0) {
        rows.push(this.firstExtra + k);
        entries.push(entry);
      }
    });
    this.simplex.addColumn(fitting.loss + penalty, rows, entries);
    return true;
  }

  /** The basis of the last solution. */
  get basis(): Basis {
    const m = this.rowKeys.length;
    const columns = this.simplex.basicColumns.map(column => {
      if (column < m) return { kind: 'own', row: this.rowKeys[column]! } as const;
      if (column < m + this.cover) return { kind: 'surplus', row: this.rowKeys[column - m]! } as const;
      return this.patterns[column - m - this.cover]!;
    });
    return { rows: new Set(this.rowKeys), columns };
  }

  /** Starts from the basis of a like program; its new rows begin uncovered. False where that does not work. */
  startFrom({ rows, columns }: Basis): boolean {
    const m = this.rowKeys.length;
    const at = new Map(this.rowKeys.map((key, row) => [key, row]));
    const numbers = columns.map(column => {
      if ('kind' in column) return (at.get(column.row) ?? NaN) + (column.kind === 'surplus' ? m : 0);
      return this.simplex.numberOf(this.keys.get(patternKey(column)) ?? NaN);
    });
    this.rowKeys.forEach((key, row) => rows.has(key) || numbers.push(row));
    return numbers.length === m && numbers.every(number => number >= 0) && this.simplex.start(numbers);
  }

  /** Solves over the known patterns. */
  solve(): boolean {
    return this.simplex.solve();
  }

  get objective(): number {
    return this.simplex.objective();
  }

  /** Duals by width, by stock (≤ 0) and by further row. */
  duals(): { items: Float64Array; stock: Float64Array; extra: Float64Array } {
    const y = this.simplex.duals();
    const pick = (rows: Int32Array) => Float64Array.from(rows, row => (row < 0 ? 0 : y[row]!));
    const covering = (duals: Float64Array) => duals.map(dual => max(0, dual));
    const extra = covering(y.slice(this.firstExtra, this.firstExtra + this.extra.length));
    return { items: covering(pick(this.itemRow)), stock: pick(this.stockRow), extra };
  }

  /** Patterns in use (by their number in `patterns`) with their fractional values, and how many pieces stay uncovered. */
  solution(): { columns: [number, number][]; short: number } {
    return this.simplex.solution();
  }
}
