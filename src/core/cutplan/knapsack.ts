import { commonDivisor } from './gridProblem';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { ceil, floor, log2, max, min } = Math;

/** The best filling of one capacity. */
export interface Fill {
  readonly value: number;
  /** No filling is worth more; equals `value` where the search was complete. */
  readonly upper: number;
  /** Pieces of each width. */
  readonly counts: Int32Array;
  /** Other good fillings that came up on the way. */
  readonly others?: readonly Int32Array[];
}

interface Choice {
  readonly item: number;
  readonly width: number;
  readonly value: number;
  readonly limit: number;
  readonly ratio: number;
}

const SMALL_TABLE = 300_000;
const LARGEST_TABLE = 30_000_000;
const OTHERS = 30;
/** Nodes of a quick search of one capacity, and of all of them together where they are many. */
const QUICK_NODES = 10_000;
const ALL_QUICK_NODES = 80_000;
/** The same for searches in place of a table that would be too large. */
const THOROUGH_NODES = 200_000;
const ALL_THOROUGH_NODES = 2_000_000;
const LEAST_NODES = 300;
const CELLS_PER_STEP = 500;
const LOOPS_PER_STEP = 220;
/** So many copies are tried before it is asked whether fewer can still win. */
const FEWER = 4;
/** A search may take so many loops of its bound for each node it may visit: long lists have long bounds. */
const LOOPS_A_NODE = 60;

function choicesOf(widths: readonly number[], values: ArrayLike<number>, limits: ArrayLike<number>, largest: number): Choice[] {
  const choices: Choice[] = [];
  for (let item = 0; item < widths.length; item++) {
    const width = widths[item]!;
    const value = values[item]!;
    const limit = min(limits[item]!, floor(largest / width));
    if (value > 0 && limit > 0) choices.push({ item, width, value, limit, ratio: value / width });
  }
  return choices.sort((a, b) => b.ratio - a.ratio || a.item - b.item);
}

/** Copies of a choice bundled by powers of two, so that a table over 0/1 choices covers its limit. */
function bundles(choices: readonly Choice[]): { item: number; copies: number; width: number; value: number }[] {
  return choices.flatMap(({ item, width, value, limit }) => {
    const parts = [];
    for (let left = limit, size = 1; left > 0; left -= size, size *= 2) {
      const copies = min(size, left);
      parts.push({ item, copies, width: width * copies, value: value * copies });
      if (size > left) break;
    }
    return parts;
  });
}

/** The same parts in a fixed mixed order: then the last rows of a table bring fillings that differ. */
function mixed<T>(parts: readonly T[]): T[] {
  const key = (k: number) => (k * 0.6180339887498949) % 1;
  return parts
    .map((part, k) => ({ part, key: key(k + 1) }))
    .sort((a, b) => a.key - b.key)
    .map(one => one.part);
}

function byTable(choices: readonly Choice[], capacities: readonly number[], size: number, work: Work): Fill[] {
  const unit = commonDivisor(choices.map(choice => choice.width));
  const largest = floor(max(0, ...capacities) / unit);
  const cells = largest + 1;
  const parts = mixed(bundles(choices).map(part => ({ ...part, width: part.width / unit })));
  const best = new Float64Array(cells);
  const taken = new Uint8Array(parts.length * cells);
  const ends = capacities.map(capacity => floor(max(0, capacity) / unit));
  const improvedAt: number[][] = ends.map(() => []);
  parts.forEach((part, row) => {
    const start = row * cells;
    for (let at = largest, from = largest - part.width; from >= 0; at--, from--) {
      const value = best[from]! + part.value;
      if (value > best[at]!) {
        best[at] = value;
        taken[start + at] = 1;
      }
    }
    ends.forEach((end, k) => taken[start + end] && improvedAt[k]!.push(row));
  });
  work.spend((parts.length * largest) / CELLS_PER_STEP);
  const filling = (last: number, end: number): Int32Array => {
    const counts = new Int32Array(size);
    for (let row = last, at = end; row >= 0; row--) {
      if (taken[row * cells + at]) {
        counts[parts[row]!.item]! += parts[row]!.copies;
        at -= parts[row]!.width;
      }
    }
    return counts;
  };
  return ends.map((end, k) => {
    // Only a single capacity's other fillings are asked for.
    if (ends.length > 1) return { value: best[end]!, upper: best[end]!, counts: filling(parts.length - 1, end) };
    const others = improvedAt[k]!.slice(-OTHERS - 1, -1).map(row => filling(row, end));
    return { value: best[end]!, upper: best[end]!, counts: filling(parts.length - 1, end), others };
  });
}

/** Choices by column, best value by width first. */
interface Columns {
  readonly item: Int32Array;
  readonly width: Float64Array;
  readonly value: Float64Array;
  readonly limit: Int32Array;
  /** Least width from each position on. */
  readonly narrowest: Float64Array;
}

function columnsOf(choices: readonly Choice[]): Columns {
  const n = choices.length;
  const narrowest = new Float64Array(n + 1).fill(Infinity);
  for (let i = n - 1; i >= 0; i--) narrowest[i] = min(narrowest[i + 1]!, choices[i]!.width);
  return {
    item: Int32Array.from(choices, choice => choice.item),
    width: Float64Array.from(choices, choice => choice.width),
    value: Float64Array.from(choices, choice => choice.value),
    limit: Int32Array.from(choices, choice => choice.limit),
    narrowest,
  };
}

/** Depth-first search, best value by width first; the bound fills what is left in that order, the last piece in part. */
function bySearch(
  { item, width, value, limit, narrowest }: Columns,
  capacity: number,
  size: number,
  nodes: number,
  work: Work,
): Fill {
  const n = item.length;
  const now = new Int32Array(n);
  let best = 0;
  let bestCounts = new Int32Array(n);
  let left = nodes;
  let loops = 0;
  const mostLoops = nodes * LOOPS_A_NODE;

  const bound = (from: number, room: number): number => {
    let total = 0;
    for (let i = from; i < n; i++) {
      loops++;
      const fits = min(limit[i]!, floor(room / width[i]!));
      total += fits * value[i]!;
      room -= fits * width[i]!;
      if (fits < limit[i]!) return total + (room * value[i]!) / width[i]!;
    }
    return total;
  };
  // A hair is added, so that no rounding of the division can hide a better filling.
  const roomy = (total: number) => total * (1 + 1e-12) + 1e-12;
  const top = roomy(bound(0, capacity));

  const visit = (from: number, room: number, sum: number): void => {
    if (sum > best) {
      best = sum;
      bestCounts = now.slice();
    }
    for (let i = from; i < n; i++) {
      if (room < narrowest[i]!) return;
      if (width[i]! > room) continue;
      if (loops > mostLoops) left = 0;
      if (--left < 0 || roomy(sum + bound(i, room)) <= best) return;
      for (let copies = min(limit[i]!, floor(room / width[i]!)); copies > 0; copies--) {
        now[i] = copies;
        visit(i + 1, room - copies * width[i]!, sum + copies * value[i]!);
        now[i] = 0;
        if (left < 0) return;
        // Fewer of what is worth most by width are never worth more: once they cannot win, no smaller number can.
        const fewer = copies - 1;
        if (copies % FEWER === 0 && roomy(sum + fewer * value[i]! + bound(i + 1, room - fewer * width[i]!)) <= best) return;
      }
    }
  };
  visit(0, capacity, 0);
  work.spend((nodes - max(0, left) + loops) / LOOPS_PER_STEP);
  const counts = new Int32Array(size);
  for (let i = 0; i < n; i++) counts[item[i]!] = bestCounts[i]!;
  return { value: best, upper: left < 0 ? max(best, top) : best, counts };
}

/** A search a capacity, the largest first: a best filling that fits a smaller one is best there, too. Once stopped, it is only said how much none can be worth. */
function bySearches(
  choices: readonly Choice[],
  capacities: readonly number[],
  widths: readonly number[],
  nodes: number,
  work: Work,
): Fill[] {
  const fills: Fill[] = [];
  const columns = columnsOf(choices);
  const none = new Int32Array(widths.length);
  let last: { fill: Fill; width: number } | undefined;
  const largestFirst = capacities.map((_, k) => k).sort((a, b) => capacities[b]! - capacities[a]! || a - b);
  for (const k of largestFirst) {
    if (work.stopped) {
      const upper = (capacities[k]! * choices[0]!.value * (1 + 1e-12)) / choices[0]!.width;
      fills[k] = { value: 0, upper: max(0, upper), counts: none };
      continue;
    }
    if (!last || last.width > capacities[k]! || last.fill.upper !== last.fill.value) {
      const fill = bySearch(columns, capacities[k]!, widths.length, nodes, work);
      last = { fill, width: fill.counts.reduce((sum, count, item) => sum + count * widths[item]!, 0) };
    }
    fills[k] = last.fill;
  }
  return fills;
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
  const unit = commonDivisor(choices.map(choice => choice.width));
  const rows = choices.reduce((sum, choice) => sum + ceil(log2(choice.limit + 1)), 0);
  const cells = rows * (floor(largest / unit) + 1);
  if (cells <= SMALL_TABLE) return byTable(choices, capacities, widths.length, work);
  const share = (all: number, most: number) => max(LEAST_NODES, min(most, floor(all / capacities.length)));
  if (isQuick) return bySearches(choices, capacities, widths, share(ALL_QUICK_NODES, QUICK_NODES), work);
  const isTableLarge = cells > LARGEST_TABLE;
  const nodes = isTableLarge ? share(ALL_THOROUGH_NODES, THOROUGH_NODES) : max(2_000, cells / (30 * capacities.length));
  const fills = bySearches(choices, capacities, widths, nodes, work);
  if (isTableLarge || work.stopped || fills.every(fill => fill.upper === fill.value)) return fills;
  return byTable(choices, capacities, widths.length, work);
}
