import { floor, max, min } from '../arithmetic';
import type { Choice, Fill } from './fillChoice';
import type { Work } from './work';

const NODES_PER_STEP = 100;
/** Nodes after which it is given up. */
const MOST_NODES = 1_000_000;
const OTHERS = 30;

/** So many pieces fit at most. */
export function mostPieces(choices: readonly Choice[], capacity: number): number {
  return floor(capacity / min(...choices.map(choice => choice.width)));
}

/** What a filling may go on with, longest first. */
class LongestFirst {
  readonly width: Float64Array;
  readonly value: Float64Array;
  readonly limit: Int32Array;
  readonly item: Int32Array;
  /** From each position on: the most valuable choice, and the most value by width. */
  readonly dearest: Int32Array;
  readonly ratio: Float64Array;
  readonly size: number;

  constructor(choices: readonly Choice[]) {
    const sorted = [...choices].sort((a, b) => b.width - a.width || a.item - b.item);
    const n = sorted.length;
    this.size = n;
    this.width = Float64Array.from(sorted, choice => choice.width);
    this.value = Float64Array.from(sorted, choice => choice.value);
    this.limit = Int32Array.from(sorted, choice => choice.limit);
    this.item = Int32Array.from(sorted, choice => choice.item);
    this.dearest = new Int32Array(n + 1).fill(-1);
    this.ratio = new Float64Array(n + 1);
    for (let i = n - 1; i >= 0; i--) {
      const next = this.dearest[i + 1]!;
      this.dearest[i] = next < 0 || this.value[i]! >= this.value[next]! ? i : next;
      this.ratio[i] = max(this.ratio[i + 1]!, sorted[i]!.ratio * (1 + 1e-12));
    }
  }

  /** The first position from `from` on that fits. */
  firstFit(from: number, room: number): number {
    let high = this.size;
    let low = from;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.width[middle]! <= room) high = middle;
      else low = middle + 1;
    }
    return low;
  }
}

/** A search over one capacity. */
class FewSearch {
  best = 0;
  bestPicks: readonly number[] = [];
  readonly others: (readonly number[])[] = [];
  nodes = 0;
  private readonly picks: number[] = [];
  private readonly narrowest: number;

  constructor(private readonly list: LongestFirst) {
    this.narrowest = list.width[list.size - 1]!;
  }

  private see(sum: number, last: number): void {
    if (sum <= this.best) return;
    if (this.best > 0) this.others.push(this.bestPicks);
    this.best = sum;
    this.bestPicks = last < 0 ? [...this.picks] : [...this.picks, last];
  }

  /** Goes on with pieces from a position on, of which `used` were just taken; false once there were too many nodes. */
  visit(from: number, used: number, room: number, sum: number): boolean {
    const { list } = this;
    const { width, value, limit, dearest, ratio, size } = list;
    const start = list.firstFit(from < size && used >= limit[from]! ? from + 1 : from, room);
    if (start === size) {
      this.see(sum, -1);
      return true;
    }
    const pieces = floor(room / this.narrowest);
    if (pieces === 1) {
      const last = dearest[start]!;
      this.see(sum + value[last]!, last);
      return true;
    }
    for (let i = start; i < size; i++) {
      const most = value[dearest[i]!]!;
      if (sum + min(pieces * most, room * ratio[i]!) <= this.best) return true;
      const left = room - width[i]!;
      if (sum + value[i]! + min((pieces - 1) * most, left * ratio[i]!) <= this.best) continue;
      if (++this.nodes > MOST_NODES) return false;
      this.picks.push(i);
      const isWhole = this.visit(i, i === from ? used + 1 : 1, left, sum + value[i]!);
      this.picks.pop();
      if (!isWhole) return false;
    }
    return true;
  }
}

/**
 * The best fillings where only few pieces fit: they are tried out longest first, and the last one is looked up.
 * @returns undefined where that takes too long
 */
export function fillWithFew(
  choices: readonly Choice[],
  capacities: readonly number[],
  size: number,
  work: Work,
): Fill[] | undefined {
  const list = new LongestFirst(choices);
  const countsOf = (picks: readonly number[]) => {
    const counts = new Int32Array(size);
    for (const pick of picks) counts[list.item[pick]!]!++;
    return counts;
  };
  const fills: Fill[] = [];
  for (const capacity of capacities) {
    const search = new FewSearch(list);
    const isWhole = search.visit(0, 0, capacity, 0);
    work.spend(search.nodes / NODES_PER_STEP);
    if (!isWhole || work.stopped) return undefined;
    const others = capacities.length > 1 ? [] : search.others.slice(-OTHERS).map(countsOf);
    fills.push({ value: search.best, upper: search.best, counts: countsOf(search.bestPicks), others });
  }
  return fills;
}
