import { bestFills } from './knapsack';
import type { GridProblem } from './gridProblem';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { ceil, floor, log2, max, min } = Math;

/** Duals in whole numbers and the bound they prove. */
export interface ExactBound {
  /** No plan loses less; a multiple of the problem's grain. */
  readonly bound: number;
  /** The same before rounding, times `scale`. */
  readonly scaledBound: number;
  /** Whole-number duals of the widths, times `scale`. */
  readonly duals: Float64Array;
  /** What one piece of each stock may earn at most (≤ 0), times `scale`. */
  readonly stockDuals: Float64Array;
  readonly scale: number;
}

const EXACT = 2 ** 50;

/** A power of two that keeps every sum of this problem below 2^50. */
export function exactScale(problem: GridProblem, duals: ArrayLike<number>): number {
  let total = 1;
  problem.demand.forEach((demand, item) => (total += demand * (max(0, duals[item]!) + problem.widths[item]!)));
  for (const stock of problem.stock) total += stock.count * (stock.whole + stock.capacity);
  return 2 ** floor(log2(EXACT / total));
}

/** Rounds a scaled bound up to a loss that can be. */
export function roundedBound(scaledBound: number, scale: number, grain: number): number {
  return max(0, ceil(scaledBound / scale / grain)) * grain;
}

/** Per stock: least of (loss − value) over all its patterns, never more than the truth. */
function leastReduced(problem: GridProblem, duals: Float64Array, scale: number, work: Work): number[] {
  const { widths, demand, stock } = problem;
  const whole = bestFills(
    widths,
    duals,
    demand,
    stock.map(one => one.capacity),
    work,
  );
  const least = stock.map((one, t) => one.whole * scale - whole[t]!.upper);
  if (stock.some(one => one.base < one.whole)) {
    const gains = duals.map((dual, item) => dual - scale * widths[item]!);
    const room = stock.map(one => min(one.capacity, max(0, one.whole - one.base)));
    const open = bestFills(widths, gains, demand, room, work);
    stock.forEach((one, t) => {
      if (one.base < one.whole) least[t] = min(least[t]!, one.base * scale - open[t]!.upper);
    });
  }
  return least;
}

/**
 * A lower bound that is true whatever the duals are (Lagrange): they are rounded to whole numbers, each stock's best pattern
 * under them is found by an exact knapsack, and everything is summed in whole numbers below 2^53.
 * @param duals a dual a width, in units of loss; negative ones count as 0
 */
export function exactBound(problem: GridProblem, duals: ArrayLike<number>, work: Work): ExactBound {
  const scale = exactScale(problem, duals);
  let whole = Float64Array.from(duals, dual => max(0, floor(dual * scale)));
  let least = leastReduced(problem, whole, scale, work);
  // Unlimited stock must not earn anything: shrink the duals a little instead (Farley).
  const shrink = min(
    1,
    ...problem.stock.map((one, t) =>
      one.unlimited && least[t]! < 0 ? (one.whole * scale) / (one.whole * scale - least[t]!) : 1,
    ),
  );
  if (shrink < 1) {
    whole = whole.map(dual => floor(dual * shrink));
    least = leastReduced(problem, whole, scale, work);
  }
  const stockDuals = Float64Array.from(least, value => min(0, value));
  let scaledBound = 0;
  problem.demand.forEach((demand, item) => (scaledBound += demand * whole[item]!));
  problem.stock.forEach((one, t) => (scaledBound += one.count * stockDuals[t]!));
  return { bound: roundedBound(scaledBound, scale, problem.grain), scaledBound, duals: whole, stockDuals, scale };
}
