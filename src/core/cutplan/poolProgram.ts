import { ceil, floor, log2, max, min } from '../arithmetic';
import { exactScale, roundedBound, stockPart } from './exactBound';
import { lossOf, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { Master, type Basis } from './master';
import type { Duals } from './masterRows';
import { KindsByPattern, type Kind } from './poolKinds';
import { endingOf, type Ending } from './stockCounts';
import type { Work } from './work';

const COLUMNS_A_ROUND = 40;
const SMALL_POOL = 1_000;
const FIRST_COLUMNS = 500;
/** So many patterns are priced in one step of work. */
const PATTERNS_A_STEP = 12;

/** One node of the search: what is fixed, what is left, which patterns may still be used (by their number in the pool). */
export interface PoolNode {
  readonly fixed: readonly PatternUse[];
  readonly loss: number;
  readonly rest: GridProblem;
  readonly open: readonly number[];
  /** Kinds of pattern that must be used once at least; heeded until patterns are fixed. */
  readonly required: readonly Kind[];
  /** Where the linear program may start. */
  readonly basis?: Basis | undefined;
}

/** A pattern as far as it is still wanted, the number in the pool of the one behind it, and how often a fractional solution uses it. */
export interface PoolUse {
  readonly pattern: Pattern;
  readonly source: number;
  readonly value: number;
}

/** What a program proves. */
export interface PoolBound {
  /** No plan of the node loses less; Infinity where the numbers of stock asked for cannot be. */
  readonly bound: number;
  /** The patterns that a plan below the aim may hold. */
  readonly open: readonly number[];
}

/** What a pattern costs, covers of the demand that is left, and how it ends. */
function worthNow(problem: GridProblem, pattern: Pattern, duals: ArrayLike<number>) {
  let value = 0;
  let width = 0;
  for (let k = 0; k < pattern.items.length; k++) {
    const item = pattern.items[k]!;
    const count = min(pattern.counts[k]!, problem.demand[item]!);
    value += count * duals[item]!;
    width += count * problem.widths[item]!;
  }
  const stock = problem.stock[pattern.stock]!;
  return { value, loss: width > 0 ? lossOf(stock, width) : 0, ending: endingOf(stock, width) };
}

/** The linear program of one node. */
export class PoolProgram {
  readonly master: Master;
  private readonly sources: number[] = [];
  private readonly kinds: KindsByPattern;
  /** So many columns from there on only help to start. */
  private banned = Infinity;
  private forbidden = 0;

  /** @param pool all patterns of the search */
  constructor(
    private readonly node: PoolNode,
    private readonly pool: readonly Pattern[],
    private readonly work: Work,
  ) {
    this.kinds = new KindsByPattern(node.required, pool.length);
    this.master = this.program();
    if (node.basis && !this.isStartedFrom(node.basis)) this.master = this.program();
  }

  private program(): Master {
    const { rest, open, required } = this.node;
    const master = new Master(rest, [], this.work, required);
    this.sources.length = 0;
    this.banned = Infinity;
    this.forbidden = 0;
    for (const number of open.length <= SMALL_POOL ? open : open.slice(0, FIRST_COLUMNS)) this.add(number, master);
    return master;
  }

  /** Patterns of the basis that this branch forbids come in as banned ones. */
  private isStartedFrom(basis: Basis): boolean {
    const isOpen = new Set(this.node.open);
    const forbidden: number[] = [];
    for (const column of basis.columns) {
      if ('kind' in column) continue;
      if (isOpen.has(column.source)) this.add(column.source);
      else forbidden.push(column.source);
    }
    this.banned = this.sources.length;
    for (const number of forbidden) if (this.add(number)) this.master.banLast();
    this.forbidden = this.sources.length - this.banned;
    return this.master.startFrom(basis);
  }

  private add(number: number, master = this.master): boolean {
    return master.add(this.pool[number]!, number, this.kinds.of(number)) && this.sources.push(number) > 0;
  }

  /**
   * Solves the program and brings patterns of the pool in as they are needed.
   * @param below ends it once no plan loses less than this
   * @yields after every round
   * @returns what it proves
   */
  *solve(below: number): Generator<void, PoolBound> {
    const { open, rest, loss: before } = this.node;
    // A hair more, so that the bound in whole numbers comes out above, too.
    let enough = below - before - rest.grain * (1 - 1e-3);
    while (!this.work.over && this.master.solve(enough)) {
      if (this.master.objective > enough) {
        const settled = this.bound(below);
        if (settled.bound >= below) return settled;
        enough = Infinity;
        continue;
      }
      if (open.length <= SMALL_POOL || !this.addAttractive(this.master.duals())) break;
      yield;
    }
    return this.bound(below);
  }

  private addAttractive(duals: Duals): boolean {
    const good: { number: number; reduced: number }[] = [];
    for (const number of this.node.open) {
      const pattern = this.pool[number]!;
      const { value, loss, ending } = worthNow(this.node.rest, pattern, duals.items);
      const reduced = loss - value - this.kinds.worth(number, duals.extra) - duals.ends[ending][pattern.stock]!;
      if (reduced < -1e-7 * (1 + loss)) good.push({ number, reduced });
    }
    this.work.spend(this.node.open.length / PATTERNS_A_STEP);
    good.sort((a, b) => a.reduced - b.reduced);
    let added = 0;
    for (const { number } of good) if (added < COLUMNS_A_ROUND && this.add(number)) added++;
    return added > 0;
  }

  private isOpen(column: number): boolean {
    return column < this.banned || column >= this.banned + this.forbidden;
  }

  get uses(): PoolUse[] {
    return this.master
      .solution()
      .columns.filter(([column]) => this.isOpen(column))
      .map(([column, value]) => ({ pattern: this.master.patterns[column]!, source: this.sources[column]!, value }));
  }

  /** A bound in whole numbers over the listed patterns, whatever the duals are. */
  private bound(below: number): PoolBound {
    const { rest, open, required, loss: before } = this.node;
    this.work.spend(open.length / PATTERNS_A_STEP);
    const floats = this.master.duals();
    const largest = exactScale(rest, floats.items, floats.all);
    if (largest < 1) return { bound: before, open };
    const scale = largest / 2 ** ceil(log2(2 + (max(0, ...floats.extra) > 0 ? required.length : 0)));
    const whole = (duals: Float64Array) => duals.map(dual => floor(dual * scale));
    const duals = whole(floats.items);
    const extra = whole(floats.extra);
    const least: Record<Ending, number[]> = { closed: rest.stock.map(() => Infinity), open: rest.stock.map(() => Infinity) };
    const priced = open.map(number => {
      const { stock } = this.pool[number]!;
      const { value, loss, ending } = worthNow(rest, this.pool[number]!, duals);
      const reduced = loss * scale - value - this.kinds.worth(number, extra);
      least[ending][stock] = min(least[ending][stock]!, reduced);
      return { number, stock, ending, reduced };
    });
    const together = { closed: floor(floats.all.closed * scale), open: floor(floats.all.open * scale) };
    const { sum, reach } = stockPart(rest, least, together);
    let scaled = sum;
    rest.demand.forEach((demand, item) => (scaled += demand * duals[item]!));
    for (const dual of extra) scaled += dual;
    if (scaled === Infinity) return { bound: Infinity, open: [] };
    const spare = (below - rest.grain - before) * scale - scaled;
    const kept = priced.filter(({ stock, ending, reduced }) => reduced <= spare + reach[ending][stock]!);
    return { bound: before + roundedBound(scaled, scale, rest.grain), open: kept.map(({ number }) => number) };
  }
}
