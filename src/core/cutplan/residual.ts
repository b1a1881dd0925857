import { floor, max, min } from '../arithmetic';
import { countsAfter, endingOf, mostByCounts, type StockCounts } from './stockCounts';
import { lossOf, patternKey, type GridPlan, type GridProblem, type Pattern, type PatternUse } from './gridProblem';

function mayCut({ stock }: GridProblem, counts: StockCounts, pattern: Pattern, times: number): boolean {
  return times <= mostByCounts(counts, pattern.stock, endingOf(stock[pattern.stock]!, pattern.width));
}

/** How often a pattern can be cut: stock there is, numbers wanted, and pieces (as often as all of them are still wanted). */
export function mostTimes({ demand, stock, counts }: GridProblem, pattern: Pattern): number {
  const one = stock[pattern.stock]!;
  const byPieces = min(...pattern.items.map((item, k) => floor(demand[item]! / pattern.counts[k]!)));
  const byCounts = counts ? mostByCounts(counts, pattern.stock, endingOf(one, pattern.width)) : Infinity;
  return min(one.count, byCounts, byPieces);
}

/** What is still to be cut after some patterns are fixed; undefined where there is not that much stock. */
export function residual(problem: GridProblem, uses: readonly PatternUse[]): GridProblem | undefined {
  const demand = [...problem.demand];
  const counts = problem.stock.map(stock => stock.count);
  let wanted = problem.counts;
  for (const { pattern, times } of uses) {
    pattern.items.forEach((item, k) => (demand[item] = max(0, demand[item]! - times * pattern.counts[k]!)));
    counts[pattern.stock]! -= times;
    if (counts[pattern.stock]! < 0) return undefined;
    if (wanted && !mayCut(problem, wanted, pattern, times)) return undefined;
    if (wanted) wanted = countsAfter(wanted, pattern.stock, endingOf(problem.stock[pattern.stock]!, pattern.width), times);
  }
  return {
    ...problem,
    demand,
    stock: problem.stock.map((one, t) => (counts[t] === one.count ? one : { ...one, count: counts[t]! })),
    counts: wanted,
  };
}

/** True where nothing is left to cut. */
export function isDone(problem: GridProblem): boolean {
  return problem.demand.every(demand => demand <= 0);
}

/**
 * A plan from pattern uses that cover the demand: pieces nobody asked for are taken out, equal patterns are joined.
 * @returns undefined where a piece is missing
 */
export function planOf(problem: GridProblem, uses: readonly PatternUse[]): GridPlan | undefined {
  const left = [...problem.demand];
  const joined = new Map<string, { pattern: Pattern; times: number }>();
  for (const { pattern, times } of uses) {
    for (let copies = times; copies > 0;) {
      const counts = pattern.items.map((item, k) => min(pattern.counts[k]!, left[item]!));
      const items = pattern.items.filter((_, k) => counts[k]! > 0);
      if (items.length === 0) break;
      const kept = counts.filter(count => count > 0);
      const alike = min(copies, ...items.map((item, k) => floor(left[item]! / kept[k]!)));
      items.forEach((item, k) => (left[item]! -= alike * kept[k]!));
      copies -= alike;
      const width = items.reduce((sum, item, k) => sum + kept[k]! * problem.widths[item]!, 0);
      const trimmed = { stock: pattern.stock, items, counts: kept, width, loss: lossOf(problem.stock[pattern.stock]!, width) };
      const key = patternKey(trimmed);
      const known = joined.get(key);
      if (known) known.times += alike;
      else joined.set(key, { pattern: trimmed, times: alike });
    }
  }
  if (left.some(count => count > 0)) return undefined;
  const all = [...joined.values()];
  return { uses: all, loss: all.reduce((sum, use) => sum + use.pattern.loss * use.times, 0) };
}

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
