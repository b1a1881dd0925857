import { floor, max, min } from '../arithmetic';
import { fillByExactWidth } from './fillByTable';
import { everyChoice, type Fill } from './fillChoice';
import { commonDivisor, type GridProblem } from './gridProblem';
import { bestFills, LARGEST_TABLE, valueTableRows } from './knapsack';
import { canStayOpen } from './stockCounts';
import type { Work } from './work';

const isWideEnough = ({ widths, stock }: GridProblem, t: number, { counts }: Fill) =>
  !canStayOpen(stock[t]!) || counts.reduce((sum, count, item) => sum + count * widths[item]!, 0) > roomOf(stock[t]!);

const roomOf = ({ whole, base }: GridProblem['stock'][number]) => whole - base;

/**
 * The best fillings that leave no offcut of worth of some stock. Most are the best of all fillings; where that leaves an offcut, those
 * that are long enough are gone through by their exact width.
 * @param which positions of the stock
 * @returns one filling a stock; its `upper` is −Infinity where there is none
 */
export function closedFills(
  problem: GridProblem,
  values: ArrayLike<number>,
  limits: readonly number[],
  which: readonly number[],
  work: Work,
): Fill[] {
  const { widths, stock } = problem;
  const capacities = which.map(t => stock[t]!.capacity);
  const fills = bestFills(widths, values, limits, capacities, work);
  const narrow = which.filter((t, k) => !isWideEnough(problem, t, fills[k]!));
  const largest = max(0, ...narrow.map(t => stock[t]!.capacity));
  const choices = everyChoice(widths, values, limits, largest);
  if (narrow.length === 0 || choices.length === 0 || work.stopped) return fills;
  const unit = commonDivisor(choices.map(choice => choice.width));
  if (valueTableRows(choices) * (floor(largest / unit) + 1) > LARGEST_TABLE) return fills;
  const ranges = narrow.map(t => ({ above: roomOf(stock[t]!), upTo: stock[t]!.capacity }));
  const wide = fillByExactWidth(choices, ranges, widths.length, work);
  return fills.map((fill, k) => wide[narrow.indexOf(which[k]!)] ?? fill);
}

/**
 * The best fillings that leave an offcut of worth of some stock, never empty.
 * @param gains what each width is worth beyond its length
 * @param which positions of the stock
 * @returns one filling a stock; its `upper` is −Infinity where there is none
 */
export function openFills(
  { widths, stock }: GridProblem,
  gains: ArrayLike<number>,
  limits: readonly number[],
  which: readonly number[],
  work: Work,
  isQuick = false,
): Fill[] {
  const rooms = which.map(t => min(stock[t]!.capacity, max(0, roomOf(stock[t]!))));
  return bestFills(widths, gains, limits, rooms, work, isQuick).map((fill, k) => {
    if (fill.upper > 0) return fill;
    // Nothing gains: the one piece that loses least.
    let best = -1;
    for (let item = 0; item < widths.length; item++) {
      if (limits[item]! > 0 && widths[item]! <= rooms[k]! && (best < 0 || gains[item]! > gains[best]!)) best = item;
    }
    const value = best < 0 ? -Infinity : gains[best]!;
    return { value, upper: value, counts: Int32Array.from(widths, (_, item) => (item === best ? 1 : 0)) };
  });
}
