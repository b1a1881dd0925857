import { exactScale, roundedBound, stockPart } from './exactBound';
import { cutCoefficient, cutDemand, type Cut } from './poolCuts';
import { lossOf, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { Master, shortCost, type Basis, type ExtraRow } from './master';
import { endingOf, type Ending } from './stockCounts';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { ceil, floor, log2, max, min } = Math;

const COLUMNS_A_ROUND = 40;
const SMALL_POOL = 1_000;
/** So many patterns are priced in one step of work. */
const PATTERNS_A_STEP = 20;

/** What a pattern costs and covers of the demand that is left. */
function worthNow(problem: GridProblem, pattern: Pattern, duals: ArrayLike<number>): { value: number; loss: number } {
  let value = 0;
  let width = 0;
  for (let k = 0; k < pattern.items.length; k++) {
    const item = pattern.items[k]!;
    const count = min(pattern.counts[k]!, problem.demand[item]!);
    value += count * duals[item]!;
    width += count * problem.widths[item]!;
  }
  return { value, loss: width > 0 ? lossOf(problem.stock[pattern.stock]!, width) : 0 };
}

/** A kind of pattern: all that hold a pair, or a single one. */
export interface Requirement {
  readonly key: string;
  holds(pattern: Pattern): boolean;
}

/** One node of the search: what is fixed, what is left, which patterns may still be used. */
export interface PoolNode {
  readonly fixed: readonly PatternUse[];
  readonly loss: number;
  readonly rest: GridProblem;
  readonly pool: readonly Pattern[];
  readonly start: readonly Pattern[];
  /** Kinds of pattern that must be used once at least; heeded until patterns are fixed. */
  readonly required: readonly Requirement[];
  /** Where the linear program may start. */
  readonly basis?: Basis | undefined;
}

/** A pattern as far as it is still wanted, the one of the pool behind it, and its number in a fractional solution. */
export interface PoolUse {
  readonly pattern: Pattern;
  readonly source: Pattern;
  readonly value: number;
}

/** The linear program of one node with the cuts known so far. */
export class PoolProgram {
  readonly master: Master;
  private readonly sources: Pattern[] = [];
  private readonly rows: readonly ExtraRow[];
  /** So many columns from there on only help to start. */
  private banned = Infinity;
  private forbidden = 0;

  constructor(
    private readonly node: PoolNode,
    cuts: readonly Cut[],
    private readonly work: Work,
  ) {
    const { rest, basis } = node;
    const required = node.fixed.length > 0 ? [] : node.required;
    this.rows = [
      ...cuts.map(cut => ({
        key: `cut ${cut.join()}`,
        demand: cutDemand(rest, cut),
        coefficient: (one: Pattern) => cutCoefficient(rest, one, cut),
      })),
      ...required.map(({ key, holds }) => ({ key, demand: 1, coefficient: (one: Pattern) => (holds(one) ? 1 : 0) })),
    ].filter(row => row.demand > 0);
    this.master = this.program();
    if (basis && node.fixed.length === 0 && !this.isStartedFrom(basis)) this.master = this.program();
  }

  private program(): Master {
    const { rest, pool, start } = this.node;
    const master = new Master(rest, [], this.work, this.rows);
    this.sources.length = 0;
    this.banned = Infinity;
    this.forbidden = 0;
    for (const pattern of pool.length <= SMALL_POOL ? pool : start) if (master.add(pattern)) this.sources.push(pattern);
    return master;
  }

  /** Patterns of the basis that this branch forbids come in at a price that drives them out. */
  private isStartedFrom(basis: Basis): boolean {
    const forbidden: Pattern[] = [];
    for (const column of basis.columns) {
      if ('kind' in column) continue;
      if (this.node.pool.includes(column)) this.add(column);
      else forbidden.push(column);
    }
    this.banned = this.sources.length;
    for (const pattern of forbidden) if (this.master.add(pattern, shortCost(this.node.rest))) this.sources.push(pattern);
    this.forbidden = this.sources.length - this.banned;
    return this.master.startFrom(basis);
  }

  private add(pattern: Pattern): boolean {
    return this.master.add(pattern) && this.sources.push(pattern) > 0;
  }

  private earned(pattern: Pattern, duals: ArrayLike<number>, extra: ArrayLike<number>): { value: number; loss: number } {
    const worth = worthNow(this.node.rest, pattern, duals);
    this.rows.forEach((row, k) => {
      if (extra[k]! > 0) worth.value += extra[k]! * row.coefficient(pattern);
    });
    return worth;
  }

  /** Brings patterns of the pool in as they are needed. */
  solve(): void {
    const { pool } = this.node;
    while (!this.work.over && this.master.solve()) {
      const duals = this.master.duals();
      const good: { pattern: Pattern; reduced: number }[] = [];
      for (const pattern of pool) {
        const { value, loss } = this.earned(pattern, duals.items, duals.extra);
        const reduced = loss - value - duals.ends[this.endingOf(pattern)][pattern.stock]!;
        if (reduced < -1e-7 * (1 + loss)) good.push({ pattern, reduced });
      }
      this.work.spend(pool.length / PATTERNS_A_STEP);
      good.sort((a, b) => a.reduced - b.reduced);
      let added = 0;
      for (const { pattern } of good) if (added < COLUMNS_A_ROUND && this.add(pattern)) added++;
      if (added === 0) break;
    }
  }

  get uses(): PoolUse[] {
    return this.master
      .solution()
      .columns.filter(([column]) => column < this.banned || column >= this.banned + this.forbidden)
      .map(([column, value]) => ({ pattern: this.master.patterns[column]!, source: this.sources[column]!, value }));
  }

  private endingOf(pattern: Pattern): Ending {
    const { demand, stock, widths } = this.node.rest;
    let width = 0;
    pattern.items.forEach((item, k) => (width += min(pattern.counts[k]!, demand[item]!) * widths[item]!));
    return endingOf(stock[pattern.stock]!, width);
  }

  /** A bound in whole numbers over the listed patterns, whatever the duals are; Infinity where the numbers of stock asked for cannot be. */
  bound(): number {
    const { rest, pool, loss: before } = this.node;
    this.work.spend(pool.length / PATTERNS_A_STEP);
    const floats = this.master.duals();
    const largest = exactScale(rest, floats.items);
    if (largest < 1) return before;
    const scale = largest / 2 ** ceil(log2(2 + (max(0, ...floats.extra) > 0 ? this.rows.length : 0)));
    const whole = (duals: Float64Array) => duals.map(dual => floor(dual * scale));
    const duals = whole(floats.items);
    const extra = whole(floats.extra);
    const least = { closed: rest.stock.map(() => Infinity), open: rest.stock.map(() => Infinity) };
    for (const pattern of pool) {
      const { value, loss } = this.earned(pattern, duals, extra);
      const ends = least[this.endingOf(pattern)];
      ends[pattern.stock] = min(ends[pattern.stock]!, loss * scale - value);
    }
    let scaled = 0;
    rest.demand.forEach((demand, item) => (scaled += demand * duals[item]!));
    this.rows.forEach((row, k) => (scaled += row.demand * extra[k]!));
    scaled += stockPart(rest, least, { closed: floor(floats.all.closed * scale), open: floor(floats.all.open * scale) }).sum;
    return before + (scaled === Infinity ? Infinity : roundedBound(scaled, scale, rest.grain));
  }
}
