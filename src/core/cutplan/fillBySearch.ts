import { floor, max, min } from '../arithmetic';
import type { Choice, Fill } from './fillChoice';
import type { Work } from './work';

const LOOPS_PER_STEP = 130;
/** So many copies are tried before it is asked whether fewer can still win. */
const FEWER = 4;
/** A search may take so many loops of its bound for each node it may visit: long lists have long bounds. */
const LOOPS_A_NODE = 60;

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
export function fillBySearch(
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
