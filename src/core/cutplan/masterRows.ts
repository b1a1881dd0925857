import { max } from '../arithmetic';
import type { GridProblem, Pattern } from './gridProblem';
import { ENDINGS, endingOf, type CountRange, type Ending } from './stockCounts';

/** A further row: patterns of which one at least must be used. */
export interface ExtraRow {
  readonly key: string;
}

/** A row that limits how many pieces of stock end in one way: one stock, or all. */
interface CountRow {
  readonly key: string;
  readonly ending: Ending;
  readonly stock: number | undefined;
}

/** The numbers of stock that the problem asks for, as rows: at least (≥), and at most where that says more than the stock there is. */
function countRows({ stock, counts }: GridProblem): { low: CountRow[]; high: CountRow[] } {
  const low: CountRow[] = [];
  const high: CountRow[] = [];
  const add = (ending: Ending, t: number | undefined, range: CountRange, most: number) => {
    const key = `${ending} ${t ?? 'all'}`;
    if (range.low > 0) low.push({ key: `${key} low`, ending, stock: t });
    if (range.high < most) high.push({ key: `${key} high`, ending, stock: t });
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

/** Which row of the linear program stands for what: widths, further rows, least numbers of stock (all ≥); stock, most numbers (≤). */
export class MasterRows {
  /** Equal rows of different programs have equal keys. */
  readonly keys: readonly string[];
  /** So many rows are ≥. */
  readonly cover: number;
  private readonly itemRow: Int32Array;
  private readonly stockRow: Int32Array;
  private readonly firstExtra: number;
  private readonly firstLow: number;
  private readonly firstHigh: number;
  private readonly low: readonly CountRow[];
  private readonly high: readonly CountRow[];

  constructor(
    problem: GridProblem,
    private readonly extra: readonly ExtraRow[],
  ) {
    const { demand, stock } = problem;
    const { low, high } = countRows(problem);
    [this.low, this.high] = [low, high];
    let row = 0;
    this.itemRow = Int32Array.from(demand, wanted => (wanted > 0 ? row++ : -1));
    this.firstExtra = row;
    this.firstLow = row + extra.length;
    this.cover = this.firstLow + low.length;
    row = this.cover;
    this.stockRow = Int32Array.from(stock, one => (one.count > 0 && !one.unlimited ? row++ : -1));
    this.firstHigh = row;
    this.keys = [
      ...demand.flatMap((_, item) => (this.itemRow[item]! >= 0 ? [`item ${item}`] : [])),
      ...extra.map(one => one.key),
      ...low.map(one => one.key),
      ...stock.flatMap((_, t) => (this.stockRow[t]! >= 0 ? [`stock ${t}`] : [])),
      ...high.map(one => one.key),
    ];
  }

  /** Right-hand sides for the problem, or for what is left of it. */
  rightSides({ demand, stock, counts }: GridProblem): number[] {
    const rangeOf = ({ ending, stock: t }: CountRow) => (t === undefined ? counts!.all[ending] : counts![ending][t]!);
    return [
      // A row that is done must not bind, or it would leave the program degenerate.
      ...demand.filter((_, item) => this.itemRow[item]! >= 0).map(wanted => wanted || -1),
      ...this.extra.map(() => 1),
      ...this.low.map(row => rangeOf(row).low),
      ...stock.flatMap((one, t) => (this.stockRow[t]! >= 0 ? [one.count] : [])),
      ...this.high.map(row => rangeOf(row).high),
    ];
  }

  /**
   * The rows that a pattern counts in, and how much.
   * @param further the further rows that it counts in, from 0
   */
  of({ stock }: GridProblem, pattern: Pattern, further?: Int32Array): { rows: number[]; entries: number[] } {
    const rows = pattern.items.map(item => this.itemRow[item]!);
    const entries = [...pattern.counts];
    const once = (row: number) => {
      rows.push(row);
      entries.push(1);
    };
    if (this.stockRow[pattern.stock]! >= 0) once(this.stockRow[pattern.stock]!);
    further?.forEach(row => once(this.firstExtra + row));
    const ending = endingOf(stock[pattern.stock]!, pattern.width);
    const counts = (row: CountRow) => row.ending === ending && (row.stock ?? pattern.stock) === pattern.stock;
    this.low.forEach((row, k) => counts(row) && once(this.firstLow + k));
    this.high.forEach((row, k) => counts(row) && once(this.firstHigh + k));
    return { rows, entries };
  }

  /** Duals by what their rows stand for. */
  duals(y: Float64Array): Duals {
    const covering = (duals: Float64Array) => duals.map(dual => max(0, dual));
    const items = covering(Float64Array.from(this.itemRow, row => (row < 0 ? 0 : y[row]!)));
    const stock = Float64Array.from(this.stockRow, row => (row < 0 ? 0 : y[row]!));
    const extra = covering(y.slice(this.firstExtra, this.firstLow));
    const ends = { closed: stock, open: stock.slice() };
    const all = { closed: 0, open: 0 };
    const count = (list: readonly CountRow[], first: number) =>
      list.forEach((row, k) => {
        const dual = y[first + k]!;
        if (row.stock !== undefined) ends[row.ending][row.stock]! += dual;
        else all[row.ending] += dual;
      });
    count(this.low, this.firstLow);
    count(this.high, this.firstHigh);
    for (const ending of ENDINGS) ends[ending].forEach((_, t) => (ends[ending][t]! += all[ending]));
    return { items, ends, all, extra };
  }
}
