import { max, min } from '../arithmetic';
import type { GridStock } from './gridStock';

/** Whole numbers from `low` to `high`. */
export interface CountRange {
  readonly low: number;
  readonly high: number;
}

/** The two ways to cut a piece of stock: to its end (nothing left is worth anything), or leaving an offcut. */
export type Ending = 'closed' | 'open';

export const ENDINGS: readonly Ending[] = ['closed', 'open'];

/** How many pieces of stock may end in each way: of each stock, and of all together. */
export interface StockCounts {
  readonly closed: readonly CountRange[];
  readonly open: readonly CountRange[];
  readonly all: Readonly<Record<Ending, CountRange>>;
}

/** True where the stock can leave an offcut that is worth something. */
export function canStayOpen(stock: GridStock): boolean {
  return stock.base < stock.whole;
}

/** How a piece of stock ends from which `width` is cut. */
export function endingOf(stock: GridStock, width: number): Ending {
  return canStayOpen(stock) && width <= stock.whole - stock.base ? 'open' : 'closed';
}

/** Every number of pieces of stock that there can be. */
export function anyCounts(stock: readonly GridStock[]): StockCounts {
  const total = stock.reduce((sum, one) => sum + one.count, 0);
  return {
    closed: stock.map(one => ({ low: 0, high: one.count })),
    open: stock.map(one => ({ low: 0, high: canStayOpen(one) ? one.count : 0 })),
    all: { closed: { low: 0, high: total }, open: { low: 0, high: total } },
  };
}

/** How many more pieces of a stock may end in that way. */
export function mostByCounts(counts: StockCounts, stock: number, ending: Ending): number {
  return min(counts[ending][stock]!.high, counts.all[ending].high);
}

/** What may still be cut after one stock was cut so often and ended in that way. */
export function countsAfter(counts: StockCounts, stock: number, ending: Ending, times: number): StockCounts {
  const less = ({ low, high }: CountRange): CountRange => ({ low: max(0, low - times), high: max(0, high - times) });
  const list = counts[ending].map((range, t) => (t === stock ? less(range) : range));
  return { ...counts, [ending]: list, all: { ...counts.all, [ending]: less(counts.all[ending]) } };
}

/**
 * The least that `count` pieces of a stock add up to, each at its price by its ending.
 * @param least at least so many of each ending, beside the ranges
 * @returns Infinity where the ranges leave no way
 */
export function cheapestCounts(
  prices: Readonly<Record<Ending, number>>,
  ranges: Readonly<Record<Ending, CountRange>>,
  count: number,
  least: Readonly<Record<Ending, number>>,
): number {
  const low = { closed: max(ranges.closed.low, least.closed), open: max(ranges.open.low, least.open) };
  let room = count - low.closed - low.open;
  if (room < 0 || low.closed > ranges.closed.high || low.open > ranges.open.high) return Infinity;
  let total = 0;
  for (const ending of ENDINGS) if (low[ending] > 0) total += low[ending] * prices[ending];
  const cheapFirst = prices.open < prices.closed ? (['open', 'closed'] as const) : ENDINGS;
  for (const ending of cheapFirst) {
    if (prices[ending] >= 0) continue;
    const more = min(room, ranges[ending].high - low[ending]);
    total += more * prices[ending];
    room -= more;
  }
  return total;
}
