import { ceil, floor, log2, max, min } from '../arithmetic';
import { fillByTable } from './fillByTable';
import { fillBySearch } from './fillBySearch';
import { choicesOf, type Choice, type Fill } from './fillChoice';
import { fillWithFew, mostPieces } from './fillWithFew';
import { commonDivisor } from './gridProblem';
import type { Work } from './work';

const SMALL_TABLE = 300_000;
/** Cells of the largest table that is worked out. */
export const LARGEST_TABLE = 30_000_000;
/** Nodes of a quick search of one capacity, and of all of them together where they are many. */
const QUICK_NODES = 10_000;
const ALL_QUICK_NODES = 80_000;
/** The same for searches in place of a table that would be too large. */
const THOROUGH_NODES = 200_000;
const ALL_THOROUGH_NODES = 2_000_000;
const LEAST_NODES = 300;
/** Pieces in one filling up to which they are tried out, longest first. */
const FEW = 5;

/** Rows that a table over these choices has. */
export function valueTableRows(choices: readonly Choice[]): number {
  return choices.reduce((sum, choice) => sum + ceil(log2(choice.limit + 1)), 0);
}

/**
 * The best fillings of several capacities with pieces of limited number (bounded knapsack).
 * Whole-number values below 2^53 are treated exactly.
 * @param limits pieces of each width there are
 * @param isQuick good fillings will do: only small tables are worked out in full
 * @returns one filling a capacity. Where the work would be unreasonable its `upper` lies above its `value`
 */
export function bestFills(
  widths: readonly number[],
  values: ArrayLike<number>,
  limits: ArrayLike<number>,
  capacities: readonly number[],
  work: Work,
  isQuick = false,
): Fill[] {
  const largest = max(0, ...capacities);
  const choices = choicesOf(widths, values, limits, largest);
  if (choices.length === 0) return capacities.map(() => ({ value: 0, upper: 0, counts: new Int32Array(widths.length) }));
  if (mostPieces(choices, largest) <= FEW) {
    const fills = fillWithFew(choices, capacities, widths.length, work);
    if (fills) return fills;
  }
  const unit = commonDivisor(choices.map(choice => choice.width));
  const cells = valueTableRows(choices) * (floor(largest / unit) + 1);
  if (cells <= SMALL_TABLE) return fillByTable(choices, capacities, widths.length, work);
  const share = (all: number, most: number) => max(LEAST_NODES, min(most, floor(all / capacities.length)));
  if (isQuick) return fillBySearch(choices, capacities, widths, share(ALL_QUICK_NODES, QUICK_NODES), work);
  const isTableLarge = cells > LARGEST_TABLE;
  const nodes = isTableLarge ? share(ALL_THOROUGH_NODES, THOROUGH_NODES) : max(2_000, cells / (300 * capacities.length));
  const fills = fillBySearch(choices, capacities, widths, nodes, work);
  if (isTableLarge || work.stopped || fills.every(fill => fill.upper === fill.value)) return fills;
  return fillByTable(choices, capacities, widths.length, work);
}
