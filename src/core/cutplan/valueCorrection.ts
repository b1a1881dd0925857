import { ceil, floor, max, min } from '../arithmetic';
import { patternOf, type GridPlan, type GridProblem, type Pattern, type PatternUse } from './gridProblem';
import { bestFills } from './knapsack';
import { planOf } from './residual';
import type { Work } from './work';

/** So many stocks are looked at for one pattern; where there are more, every so many-th of those left. */
const STOCKS_A_PATTERN = 24;

/** What is still to be cut, and the stock that is left. */
interface Rest {
  readonly demand: number[];
  readonly counts: number[];
}

/** The pattern that loses least for what its pieces are worth. */
function bestPattern(problem: GridProblem, { demand, counts }: Rest, values: Float64Array, work: Work): Pattern | undefined {
  const { widths, stock } = problem;
  const all = stock.map((_, t) => t).filter(t => counts[t]! > 0);
  const every = ceil(all.length / STOCKS_A_PATTERN);
  const open = all.filter((_, k) => (k + all.length) % every === 0);
  const fills = bestFills(
    widths,
    values,
    demand,
    open.map(t => stock[t]!.capacity),
    work,
    true,
  );
  let best: Pattern | undefined;
  let bestRatio = -1;
  open.forEach((t, k) => {
    if (fills[k]!.value <= 0) return;
    const pattern = patternOf(problem, t, fills[k]!.counts);
    const ratio = fills[k]!.value / (pattern.loss + 1e-9);
    if (ratio > bestRatio) [best, bestRatio] = [pattern, ratio];
  });
  return best;
}

/** Builds a plan pattern by pattern; pieces that ended in wasteful patterns become worth more for the next try. */
function* onePlan(
  problem: GridProblem,
  values: Float64Array,
  weight: number,
  work: Work,
): Generator<undefined, GridPlan | undefined> {
  const uses: PatternUse[] = [];
  const rest: Rest = { demand: [...problem.demand], counts: problem.stock.map(stock => stock.count) };
  while (rest.demand.some(wanted => wanted > 0)) {
    const pattern = bestPattern(problem, rest, values, work);
    if (!pattern || work.over) return undefined;
    yield undefined;
    const most = min(...pattern.items.map((item, k) => floor(rest.demand[item]! / pattern.counts[k]!)));
    const times = max(1, min(rest.counts[pattern.stock]!, ceil(most / 2)));
    uses.push({ pattern, times });
    const { capacity } = problem.stock[pattern.stock]!;
    pattern.items.forEach((item, k) => {
      const worth = (problem.widths[item]! ** 1.02 * capacity) / pattern.width;
      const share = (weight * pattern.counts[k]! * times) / (problem.demand[item]! + rest.demand[item]!);
      values[item] = (1 - share) * values[item]! + share * worth;
    });
    pattern.items.forEach((item, k) => (rest.demand[item]! -= times * pattern.counts[k]!));
    rest.counts[pattern.stock]! -= times;
  }
  return planOf(problem, uses);
}

/**
 * Sequential value correction (Mukhacheva; Belov and Scheithauer): a greedy method that learns from its own waste.
 * @param tries plans to build
 * @yields every plan, nothing in between
 */
export function* valueCorrection(problem: GridProblem, tries: number, work: Work): Generator<GridPlan | undefined, void> {
  const values = Float64Array.from(problem.widths, width => width ** 1.02);
  for (let k = 0; k < tries && !work.over; k++) yield yield* onePlan(problem, values, 0.5 + (k % 5) * 0.1, work);
}
