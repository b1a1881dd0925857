import { min } from '../arithmetic';
import { relax, type Relaxation } from './columnGeneration';
import { dive, EXACTLY, NEARLY } from './dive';
import { countSearch } from './countSearch';
import { exactBound, type ExactBound } from './exactBound';
import { GREEDY_ORDERS, greedyPlan } from './greedy';
import type { GridPlan, GridProblem } from './gridProblem';
import { Master } from './master';
import { patternPool } from './patternPool';
import { poolSearch } from './poolSearch';
import { valueCorrection } from './valueCorrection';
import type { Work } from './work';

/** How far the search is. */
export interface GridState {
  readonly best: GridPlan | undefined;
  /** No plan loses less. */
  readonly bound: number;
  /** True once it is shown that the stock is not enough. */
  readonly isImpossible: boolean;
}

/** Position of each width and each stock on the user's sheet. */
interface Sheet {
  readonly pieces: readonly number[];
  readonly stock: readonly number[];
}

/** A linear program with more rows (widths, stock of limited number) would not fit the seconds: value correction goes on alone. */
const MOST_ROWS = 2_000;
const COUNT_NODES = 60;
/** Plans built by value correction before the relaxation and after the first dive. */
const EARLY_CORRECTIONS = 2;
const CORRECTIONS = 15;
const DIVES = 60;
/** Dives before the patterns are listed. */
const FIRST_DIVES = 2;
const POOL = 20_000;
/** So few patterns are searched first of all. */
const SMALL_POOL = 3_000;

/** Keeps the best plan and the best bound. */
class Search {
  best: GridPlan | undefined;
  bound = 0;
  isExhausted = false;
  private readonly most: number;

  constructor(readonly problem: GridProblem) {
    this.most = problem.stock.reduce((sum, stock) => sum + stock.count * stock.whole, 0);
  }

  see(plan: GridPlan | undefined): void {
    if (plan && (!this.best || plan.loss < this.best.loss)) this.best = plan;
  }

  raise(bound: number): void {
    if (bound > this.bound) this.bound = bound;
  }

  /** No plan can lose more than all stock there is: a higher bound means that there is none. */
  get isImpossible(): boolean {
    return !this.best && (this.isExhausted || this.bound > this.most);
  }

  /** Only plans that lose less than this are of interest. */
  get below(): number {
    return this.best ? this.best.loss : this.most + this.problem.grain;
  }

  get isOver(): boolean {
    return this.isImpossible || (this.best !== undefined && this.best.loss <= this.bound);
  }

  get state(): GridState {
    return { best: this.best, bound: this.bound, isImpossible: this.isImpossible };
  }
}

/** Runs steps and shows the state after each; undefined where the search, which they may serve, is over before them. */
function* shown<Result>(search: Search, steps: Generator<unknown, Result>): Generator<GridState, Result | undefined> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (search.isOver) return undefined;
    yield search.state;
  }
}

/** A bound before any search: every width at the cheapest price of stock by length. */
function* quickBound(search: Search, work: Work): Generator<GridState, void> {
  const { widths, stock } = search.problem;
  const price = min(...stock.filter(one => one.capacity > 0).map(one => min(one.whole, one.base + one.capacity) / one.capacity));
  const duals = widths.map(width => width * price);
  const exact = yield* shown(search, exactBound(search.problem, duals, work));
  if (exact) search.raise(exact.bound);
}

/**
 * Searches the best plan: greedy orders, value correction, the linear relaxation with its exact bound, diving.
 * @param sheet position of each width and each stock on the user's sheet
 * @yields the state, often
 */
export function* solveGrid(problem: GridProblem, sheet: Sheet, work: Work): Generator<GridState, GridState> {
  const search = new Search(problem);
  for (const order of GREEDY_ORDERS) {
    if (work.over && search.best) break;
    search.see(greedyPlan(problem, order, sheet));
    yield search.state;
  }
  yield* quickBound(search, work);
  if (search.isOver) return search.state;
  yield* corrected(search, EARLY_CORRECTIONS, work);
  if (search.isOver || work.over) return search.state;
  if (problem.widths.length + problem.stock.filter(one => !one.unlimited).length > MOST_ROWS) {
    yield* corrected(search, Infinity, work);
    return search.state;
  }
  const patterns = search.best?.uses.map(use => use.pattern) ?? [];
  const root = yield* shown(search, relax(new Master(problem, patterns, work), work));
  const exact = root && (yield* shown(search, exactBound(problem, root.duals.items, work)));
  if (!root || !exact) return search.state;
  search.raise(exact.bound);
  if (search.isOver) return search.state;
  yield* counted(search, root, sheet, work);
  for (let k = 0; k < DIVES && !search.isOver && !work.over; k++) {
    if (k === 1) {
      yield* listed(search, exact, SMALL_POOL, work);
      if (search.isOver) break;
      yield* corrected(search, CORRECTIONS, work);
    }
    if (k === FIRST_DIVES) yield* listed(search, exact, POOL, work);
    for (const plan of search.isOver
      ? []
      : dive(problem, root, ((k + 1) >> 1) - 1, k % 2 === 0 ? EXACTLY : NEARLY, sheet, work)) {
      search.see(plan);
      if (search.isOver) break;
      yield search.state;
    }
  }
  return search.state;
}

/** Numbers of stock are settled one after the other, where there is a choice. */
function* counted(search: Search, root: Relaxation, sheet: Sheet, work: Work): Generator<GridState, void> {
  yield* shown(search, countSearch(search.problem, root, search, sheet, COUNT_NODES, work));
}

function* corrected(search: Search, tries: number, work: Work): Generator<GridState, void> {
  for (const plan of valueCorrection(search.problem, tries, work)) {
    search.see(plan);
    if (search.isOver) return;
    yield search.state;
  }
}

/** The search over all patterns that can matter, where these are few enough to be listed. */
function* listed(search: Search, exact: ExactBound, limit: number, work: Work): Generator<GridState, void> {
  const target = search.below - search.problem.grain;
  const pool = yield* shown(search, patternPool(search.problem, exact, target, limit, work));
  if (!pool) return;
  const isSettled = yield* shown(search, poolSearch(search.problem, pool, search, work));
  if (!isSettled || search.isOver) return;
  if (search.best) search.raise(search.best.loss);
  else search.isExhausted = true;
}
