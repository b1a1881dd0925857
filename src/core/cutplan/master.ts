import { lossOf, patternKey, type GridProblem, type Pattern } from './gridProblem';
import { Simplex } from './simplex';
import { ENDINGS, endingOf, type CountRange, type Ending } from './stockCounts';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { max, min } = Math;

/** What setting a program up takes, and each pattern that comes in. */
const STEPS_A_PROGRAM = 20;
const STEPS_A_PATTERN = 0.5;

/** The pattern cut down to what is still wanted; undefined where nothing of it is, or the stock is used up. */
function clipped(problem: GridProblem, pattern: Pattern): Pattern | undefined {
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

/** A row that limits how many pieces of stock end in one way: one stock, or all. */
interface CountRow {
  readonly key: string;
  readonly ending: Ending;
  readonly stock: number | undefined;
  readonly limit: number;
}

/** The numbers of stock that the problem asks for, as rows: at least (≥), and at most where that says more than the stock there is. */
function countRows({ stock, counts }: GridProblem): { low: CountRow[]; high: CountRow[] } {
  const low: CountRow[] = [];
  const high: CountRow[] = [];
  const add = (ending: Ending, t: number | undefined, range: CountRange, most: number) => {
    const key = `${ending} ${t ?? 'all'}`;
    if (range.low > 0) low.push({ key: `${key} low`, ending, stock: t, limit: range.low });
    if (range.high < most) high.push({ key: `${key} high`, ending, stock: t, limit: range.high });
  };
  if (!counts) return { low, high };
  const total = stock.reduce((sum, one) => sum + one.count, 0);
  for (const ending of ENDINGS) {
    counts[ending].forEach((range, t) => stock[t]!.count > 0 && add(ending, t, range, stock[t]!.count));
    add(ending, undefined, counts.all[ending], total);
  }
  return { low, high };
}

/** Duals: by width, by stock and ending (everything a piece of stock so cut adds or costs beside its pieces), by further row. */
export interface Duals {
  readonly items: Float64Array;
  readonly ends: Readonly<Record<Ending, Float64Array>>;
  /** Duals of the rows that limit all stock together, part of `ends`. */
  readonly all: Readonly<Record<Ending, number>>;
  readonly extra: Float64Array;
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
  private readonly low: readonly CountRow[];
  private readonly high: readonly CountRow[];
  private readonly firstHigh: number;
  private readonly simplex: Simplex;

  constructor(
    readonly problem: GridProblem,
    start: Iterable<Pattern>,
    private readonly work: Work,
    private readonly extra: readonly ExtraRow[] = [],
  ) {
    const { demand, stock } = problem;
    const rhs: number[] = [];
    this.itemRow = Int32Array.from(demand, d => (d > 0 ? rhs.push(d) - 1 : -1));
    this.firstExtra = rhs.length;
    for (const row of extra) rhs.push(row.demand);
    const { low, high } = countRows(problem);
    [this.low, this.high] = [low, high];
    for (const row of low) rhs.push(row.limit);
    const cover = rhs.length;
    this.cover = cover;
    this.stockRow = Int32Array.from(stock, one => (one.count > 0 && !one.unlimited ? rhs.push(one.count) - 1 : -1));
    this.firstHigh = rhs.length;
    for (const row of high) rhs.push(row.limit);
    this.simplex = new Simplex(rhs, cover, new Array<number>(cover).fill(shortCost(problem)), work);
    this.rowKeys = [
      ...demand.flatMap((d, item) => (d > 0 ? [`item ${item}`] : [])),
      ...extra.map(row => row.key),
      ...low.map(row => row.key),
      ...stock.flatMap((_, t) => (this.stockRow[t]! >= 0 ? [`stock ${t}`] : [])),
      ...high.map(row => row.key),
    ];
    work.spend(STEPS_A_PROGRAM);
    for (const pattern of start) this.add(pattern);
  }

  /**
   * Adds a pattern (cut down to the demand) unless it is known.
   * @param penalty added to its loss, for a pattern that must leave
   */
  add(pattern: Pattern, penalty = 0): boolean {
    this.work.spend(STEPS_A_PATTERN);
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
    const ending = endingOf(this.problem.stock[fitting.stock]!, fitting.width);
    const counts = (row: CountRow) => row.ending === ending && (row.stock ?? fitting.stock) === fitting.stock;
    const tally = (list: readonly CountRow[], first: number) =>
      list.forEach((row, k) => {
        if (!counts(row)) return;
        rows.push(first + k);
        entries.push(1);
      });
    tally(this.low, this.firstExtra + this.extra.length);
    tally(this.high, this.firstHigh);
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

  duals(): Duals {
    const y = this.simplex.duals();
    const covering = (duals: Float64Array) => duals.map(dual => max(0, dual));
    const items = covering(Float64Array.from(this.itemRow, row => (row < 0 ? 0 : y[row]!)));
    const stock = Float64Array.from(this.stockRow, row => (row < 0 ? 0 : y[row]!));
    const extra = covering(y.slice(this.firstExtra, this.firstExtra + this.extra.length));
    const ends = { closed: stock, open: stock.slice() };
    const all = { closed: 0, open: 0 };
    const count = (list: readonly CountRow[], first: number) =>
      list.forEach((row, k) => {
        const dual = y[first + k]!;
        if (row.stock !== undefined) ends[row.ending][row.stock]! += dual;
        else all[row.ending] += dual;
      });
    count(this.low, this.firstExtra + this.extra.length);
    count(this.high, this.firstHigh);
    for (const ending of ENDINGS) ends[ending].forEach((_, t) => (ends[ending][t]! += all[ending]));
    return { items, ends, all, extra };
  }

  /** Patterns in use (by their number in `patterns`) with their fractional values, and how many pieces stay uncovered. */
  solution(): { columns: [number, number][]; short: number } {
    return this.simplex.solution();
  }
}
