import { ceil } from '../arithmetic';
import { patternOf, type GridProblem, type Pattern } from './gridProblem';
import { closedFills, openFills } from './endingFills';
import { bestFills } from './knapsack';
import type { Basis, Master } from './master';
import type { Duals } from './masterRows';
import { endingOf } from './stockCounts';
import type { Work } from './work';

/** The linear relaxation once no pattern improves it (or the work ran out). */
export interface Relaxation {
  readonly value: number;
  readonly duals: Duals;
  readonly patterns: readonly Pattern[];
  readonly uses: readonly { pattern: Pattern; value: number }[];
  readonly short: number;
  readonly complete: boolean;
  readonly basis: Basis;
}

/** Collects the patterns that would improve the linear program under its present duals. */
class Pricing {
  readonly found: Pattern[] = [];
  private readonly open: number[];

  constructor(
    private readonly problem: GridProblem,
    private readonly duals: Duals,
    private readonly work: Work,
    private readonly isQuick: boolean,
    turn: number,
  ) {
    const all = problem.stock.map((_, t) => t).filter(t => problem.stock[t]!.count > 0);
    const every = isQuick ? ceil(all.length / STOCKS_A_ROUND) : 1;
    this.open = all.filter((_, k) => (k + turn) % every === 0);
  }

  private consider(t: number, counts: ArrayLike<number>): void {
    const pattern = patternOf(this.problem, t, counts);
    const earned = pattern.items.reduce(
      (sum, item, k) => sum + this.duals.items[item]! * pattern.counts[k]!,
      this.duals.ends[endingOf(this.problem.stock[t]!, pattern.width)][t]!,
    );
    if (pattern.width > 0 && pattern.loss - earned < -1e-7 * (1 + pattern.loss)) this.found.push(pattern);
  }

  /** Patterns that fill each stock. */
  full(limits: readonly number[]): void {
    const { widths, stock } = this.problem;
    const capacities = this.open.map(t => stock[t]!.capacity);
    const { items } = this.duals;
    const fills = this.isQuick
      ? bestFills(widths, items, limits, capacities, this.work, true)
      : closedFills(this.problem, items, limits, this.open, this.work);
    this.open.forEach((t, k) => {
      this.consider(t, fills[k]!.counts);
      if (this.open.length === 1) fills[k]!.others?.forEach(other => this.consider(t, other));
    });
  }

  /** Patterns that leave an offcut of each stock. */
  offcuts(): void {
    const { widths, demand, stock } = this.problem;
    const open = this.open.filter(t => stock[t]!.base < stock[t]!.whole);
    if (open.length === 0) return;
    const gains = this.duals.items.map((dual, item) => dual - widths[item]!);
    const fills = openFills(this.problem, gains, demand, open, this.work, this.isQuick);
    open.forEach((t, k) => this.consider(t, fills[k]!.counts));
  }

  /** Further patterns from pieces that the ones found do not use, so that one round serves many widths. */
  others(): void {
    const limits = [...this.problem.demand];
    for (let k = 0; k < this.found.length && k < OTHERS; k++) {
      this.found[k]!.items.forEach(item => (limits[item] = 0));
      if (k === this.found.length - 1) this.full(limits);
    }
  }
}

const OTHERS = 12;
/** So many stocks are looked at in a quick round; where there are more, every so many-th, in turn. */
const STOCKS_A_ROUND = 40;

/** The most attractive patterns; a quick look first, a thorough one only where that finds nothing. */
function attractive(problem: GridProblem, duals: Duals, work: Work, turn: number, isRough: boolean): Pattern[] {
  for (const isQuick of isRough ? [true] : [true, false]) {
    const pricing = new Pricing(problem, duals, work, isQuick, turn);
    pricing.full(problem.demand);
    pricing.offcuts();
    if (pricing.found.length > 0) {
      if (isQuick && problem.stock.length <= 3) pricing.others();
      return pricing.found;
    }
  }
  return [];
}

/**
 * Column generation (Gilmore and Gomory): solves the linear relaxation of a cutting problem.
 * @param master the program, with patterns to begin with
 * @param isRough a quick look for patterns will do
 * @yields after every round
 */
export function* relax(master: Master, work: Work, isRough = false): Generator<void, Relaxation> {
  let complete = false;
  for (let turn = 0; !work.over; turn++) {
    if (!master.solve()) break;
    let added = 0;
    for (const pattern of attractive(master.problem, master.duals(), work, turn, isRough)) if (master.add(pattern)) added++;
    if (added === 0) {
      complete = !isRough;
      break;
    }
    yield;
  }
  const { columns, short } = master.solution();
  const uses = columns.map(([column, value]) => ({ pattern: master.patterns[column]!, value }));
  const { patterns, basis, objective } = master;
  return { value: objective, duals: master.duals(), patterns, uses, short, complete, basis };
}
