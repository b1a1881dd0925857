import { max, min } from '../arithmetic';
import type { ExactBound } from './exactBound';
import { lossOf, type GridProblem, type Pattern } from './gridProblem';
import { FillingsList } from './fillingsList';
import type { Work } from './work';

const LOOPS_PER_STEP = 100;
/** Loops for each pattern that may be listed, after which it is given up. */
const LOOPS_A_PATTERN = 1_500;

/** What stays uncut of all stock together: no pattern of a plan can waste more. */
function slackOf({ widths, demand, stock }: GridProblem): number {
  const room = stock.reduce((sum, one) => sum + one.count * max(0, one.capacity), 0);
  return room - demand.reduce((sum, count, item) => sum + count * widths[item]!, 0);
}

/**
 * All patterns that a plan losing at most `target` can hold, found by their reduced losses under exact whole-number duals.
 * Patterns that leave nothing of worth are listed only where no further piece fits: any other can be filled up at no loss.
 * @yields now and then
 * @returns undefined where there are more than `limit` of them, or the search for them is too long
 */
export function* patternPool(
  problem: GridProblem,
  exact: ExactBound,
  target: number,
  limit: number,
  work: Work,
): Generator<void, Pattern[] | undefined> {
  const { widths, demand, stock } = problem;
  const { scale, duals, reach, scaledBound } = exact;
  const spare = target * scale - scaledBound;
  const slack = slackOf(problem);
  const items = widths.map((_, item) => item).filter(item => demand[item]! > 0);
  const pool: Pattern[] = [];
  const add = (t: number, counts: Int32Array, width: number) => {
    if (pool.length > limit) return;
    const used = items.filter(item => counts[item]! > 0);
    pool.push({ stock: t, items: used, counts: used.map(item => counts[item]!), width, loss: lossOf(stock[t]!, width) });
  };
  const listing = (values: Float64Array) => {
    const order = [...items].sort((a, b) => values[b]! / widths[b]! - values[a]! / widths[a]! || a - b);
    return new FillingsList(order, widths, values, demand, limit * LOOPS_A_PATTERN);
  };
  const whole = listing(duals);
  const open = listing(duals.map((dual, item) => dual - scale * widths[item]!));
  let isWhole = true;
  for (let t = 0; t < stock.length && isWhole; t++) {
    const one = stock[t]!;
    if (one.count <= 0 || one.capacity <= 0) continue;
    const room = min(one.capacity, one.whole - one.base);
    const most = { closed: reach.closed[t]! + spare, open: reach.open[t]! + spare };
    isWhole = yield* whole.run(one.capacity, one.whole * scale - most.closed, (counts, width) => {
      if (width <= room || width === 0 || one.capacity - width > slack) return;
      if (items.every(item => counts[item]! >= demand[item]! || width + widths[item]! > one.capacity)) add(t, counts, width);
    });
    if (isWhole && room > 0) {
      isWhole = yield* open.run(room, one.base * scale - most.open, (counts, width) => {
        if (width > 0 && one.capacity - width <= slack) add(t, counts, width);
      });
    }
    if (pool.length > limit) isWhole = false;
  }
  work.spend((whole.loops + open.loops) / LOOPS_PER_STEP);
  return isWhole ? pool : undefined;
}
