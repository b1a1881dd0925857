import { min } from '../arithmetic';
import type { GridStock } from './gridStock';
import type { StockCounts } from './stockCounts';

/** The cutting problem in whole numbers: every width is a piece with its kerf. */
export interface GridProblem {
  /** Distinct widths, longest first. */
  readonly widths: readonly number[];
  readonly demand: readonly number[];
  readonly stock: readonly GridStock[];
  /** Every possible loss is a multiple of this. */
  readonly grain: number;
  /** Only plans with these numbers of stock are wanted; undefined = any. */
  readonly counts?: StockCounts | undefined;
}

/** What is cut from one piece of stock. */
export interface Pattern {
  readonly stock: number;
  /** Indices into the widths, ascending (longest first). */
  readonly items: readonly number[];
  readonly counts: readonly number[];
  readonly width: number;
  readonly loss: number;
}

/** A pattern and how many pieces of stock are cut that way. */
export interface PatternUse {
  readonly pattern: Pattern;
  readonly times: number;
}

/** A whole plan on the grid. */
export interface GridPlan {
  readonly uses: readonly PatternUse[];
  readonly loss: number;
}

/** Loss of one piece of stock from which `width` (> 0) is cut. */
export function lossOf(stock: GridStock, width: number): number {
  return min(stock.whole, stock.base + width);
}

/** The pattern of counts by width. */
export function patternOf(problem: GridProblem, stock: number, counts: ArrayLike<number>): Pattern {
  const items: number[] = [];
  const used: number[] = [];
  let width = 0;
  for (let item = 0; item < counts.length; item++) {
    if (counts[item]! > 0) {
      items.push(item);
      used.push(counts[item]!);
      width += counts[item]! * problem.widths[item]!;
    }
  }
  return { stock, items, counts: used, width, loss: lossOf(problem.stock[stock]!, width) };
}

const keys = new WeakMap<Pattern, string>();

/** Key under which equal patterns are one. */
export function patternKey(pattern: Pattern): string {
  let key = keys.get(pattern);
  if (key === undefined) {
    key = `${pattern.stock}:${pattern.items.join()}:${pattern.counts.join()}`;
    keys.set(pattern, key);
  }
  return key;
}

/** Greatest common divisor of whole numbers; 0 counts nothing. */
export function commonDivisor(numbers: Iterable<number>): number {
  let divisor = 0;
  for (const number of numbers) {
    let a = number;
    while (a !== 0) [divisor, a] = [a, divisor % a];
  }
  return divisor;
}
