import { abs, ceil, floor, log2, max, min } from '../arithmetic';
import { closedFills, openFills } from './endingFills';
import type { GridProblem } from './gridProblem';
import { anyCounts, canStayOpen, cheapestCounts, ENDINGS, type Ending } from './stockCounts';
import type { Work } from './work';

/** Duals in whole numbers and the bound they prove. */
export interface ExactBound {
  /** No plan loses less; a multiple of the problem's grain. Infinity where no plan has the numbers of stock asked for. */
  readonly bound: number;
  /** The same before rounding, times `scale`. */
  readonly scaledBound: number;
  /** Whole-number duals of the widths, times `scale`. */
  readonly duals: Float64Array;
  /**
   * By ending and stock: a plan that exceeds the scaled bound by at most `spare` holds only patterns whose (loss − value) · scale is at
   * most `spare` + this.
   */
  readonly reach: Readonly<Record<Ending, readonly number[]>>;
  readonly scale: number;
}

const EXACT = 2 ** 50;
/** Whole numbers beyond this are not exact. */
const INEXACT = 2 ** 53;
const NONE = { closed: 0, open: 0 };

/**
 * A power of two that keeps every sum of this problem below 2^50; below 1 the lengths are too large for exact sums.
 * @param all duals of the numbers of all stock together, by ending
 */
export function exactScale(problem: GridProblem, duals: ArrayLike<number>, all: Readonly<Record<Ending, number>> = NONE): number {
  let total = 1;
  problem.demand.forEach((demand, item) => (total += demand * (max(0, duals[item]!) + problem.widths[item]!)));
  // Such a dual is counted for each piece of stock, and once more for its limit.
  const together = 2 * (abs(all.closed) + abs(all.open));
  for (const stock of problem.stock) total += stock.count * (stock.whole + stock.capacity + together);
  return 2 ** floor(log2(EXACT / total));
}

/** Rounds a scaled bound up to a loss that can be. */
export function roundedBound(scaledBound: number, scale: number, grain: number): number {
  return max(0, ceil(scaledBound / scale / grain)) * grain;
}

/** Per ending and stock: least of (loss − value) over all its patterns, never more than the truth. */
function* leastReduced(
  problem: GridProblem,
  duals: Float64Array,
  scale: number,
  work: Work,
): Generator<void, Record<Ending, number[]>> {
  const { widths, demand, stock } = problem;
  const all = stock.map((_, t) => t);
  const whole = closedFills(problem, duals, demand, all, work);
  const closed = stock.map((one, t) => one.whole * scale - whole[t]!.upper);
  yield;
  if (!stock.some(canStayOpen)) return { closed, open: stock.map(() => 0) };
  const gains = duals.map((dual, item) => dual - scale * widths[item]!);
  const fills = openFills(problem, gains, demand, all, work);
  return { closed, open: stock.map((one, t) => (canStayOpen(one) ? one.base * scale - fills[t]!.upper : 0)) };
}

/** Unlimited stock must not earn anything: how far the duals shrink for that (Farley). */
function shrinkOf({ stock }: GridProblem, least: Record<Ending, number[]>, scale: number): number {
  const earned = (t: number) => min(0, least.closed[t]!, least.open[t]!);
  return min(1, ...stock.map((one, t) => (one.unlimited ? (one.whole * scale) / (one.whole * scale - earned(t)) : 1)));
}

/** What all stock adds to a scaled bound. */
interface StockPart {
  readonly sum: number;
  /** The same with every part counted as positive. */
  readonly size: number;
  readonly reach: ExactBound['reach'];
}

/**
 * The least that the stock adds up to within the numbers asked for, each piece at the least (loss − value) of its ending.
 * @param least by ending and stock, in whole numbers; Infinity where there is no such pattern
 * @param together duals of the numbers of all stock, in whole numbers
 */
export function stockPart(
  { stock, counts = anyCounts(stock) }: GridProblem,
  least: Readonly<Record<Ending, readonly number[]>>,
  together: Readonly<Record<Ending, number>>,
): StockPart {
  const reach: Record<Ending, number[]> = { closed: [], open: [] };
  let [sum, size] = [0, 0];
  const add = (part: number) => {
    sum += part;
    size += abs(part);
  };
  for (const ending of ENDINGS) {
    const dual = together[ending];
    if (dual !== 0) add(dual * (dual > 0 ? counts.all[ending].low : counts.all[ending].high));
  }
  stock.forEach((one, t) => {
    const prices = { closed: least.closed[t]! - together.closed, open: least.open[t]! - together.open };
    const ranges = { closed: counts.closed[t]!, open: counts.open[t]! };
    const cheapest = cheapestCounts(prices, ranges, one.count, NONE);
    add(cheapest);
    for (const ending of ENDINGS) {
      const once = cheapestCounts(prices, ranges, one.count, { ...NONE, [ending]: 1 });
      // Where there is no such pattern, a plan can have none.
      reach[ending].push(least[ending][t] === Infinity ? -Infinity : least[ending][t]! - (once - cheapest));
    }
  });
  return { sum, size, reach };
}

/**
 * A lower bound that is true whatever the duals are (Lagrange): they are rounded to whole numbers, each stock's best pattern
 * under them is found by an exact knapsack, and everything is summed in whole numbers below 2^53.
 * @param duals a dual a width, in units of loss; negative ones count as 0
 * @param all duals of the numbers of all stock together, by ending
 * @yields between its steps
 */
export function* exactBound(
  problem: GridProblem,
  duals: ArrayLike<number>,
  work: Work,
  all: Readonly<Record<Ending, number>> = NONE,
): Generator<void, ExactBound> {
  const { demand } = problem;
  const scale = exactScale(problem, duals, all);
  let whole = Float64Array.from(duals, dual => max(0, floor(dual * scale)));
  let least = yield* leastReduced(problem, whole, scale, work);
  const shrink = shrinkOf(problem, least, scale);
  if (shrink < 1) {
    whole = whole.map(dual => floor(dual * shrink));
    yield;
    least = yield* leastReduced(problem, whole, scale, work);
  }
  let pieces = 0;
  demand.forEach((wanted, item) => (pieces += wanted * whole[item]!));
  const together = { closed: floor(all.closed * scale), open: floor(all.open * scale) };
  const { sum, size, reach } = stockPart(problem, least, together);
  let scaledBound = pieces + sum;
  if (scaledBound === Infinity) return { bound: Infinity, scaledBound, duals: whole, reach, scale };
  // Far below any loss there can be, or of lengths too large: such a sum proves nothing.
  if (size + pieces > INEXACT || scale < 1) scaledBound = -Infinity;
  return { bound: roundedBound(scaledBound, scale, problem.grain), scaledBound, duals: whole, reach, scale };
}
