import type { ExactBound } from './exactBound';
import { lossOf, type GridProblem, type Pattern } from './gridProblem';
import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { floor, max, min } = Math;

const LOOPS_PER_STEP = 100;
/** Loops after which listing is given up. */
const MOST_LOOPS = 30_000_000;

/** Lists all ways to fill one capacity that are worth at least `need`. */
class Listing {
  private readonly now: Int32Array;
  private loops = 0;

  constructor(
    private readonly order: readonly number[],
    private readonly widths: readonly number[],
    private readonly values: Float64Array,
    private readonly limits: readonly number[],
  ) {
    this.now = new Int32Array(widths.length);
  }

  /** Most that the items from `from` on can be worth in this room; a hair too much, never too little. */
  private most(from: number, room: number): number {
    let total = 0;
    for (let i = from; i < this.order.length; i++) {
      this.loops++;
      const item = this.order[i]!;
      if (this.values[item]! <= 0) break;
      const width = this.widths[item]!;
      const fits = min(this.limits[item]!, floor(room / width));
      total += fits * this.values[item]!;
      room -= fits * width;
      if (fits < this.limits[item]!) return (total + (room * this.values[item]!) / width) * (1 + 1e-12) + 1e-6;
    }
    return total + 1e-6;
  }

  /** Calls `found` with every filling; false where that takes too long. */
  run(capacity: number, need: number, found: (counts: Int32Array, width: number) => void): boolean {
    const visit = (from: number, room: number, sum: number): boolean => {
      if ((this.loops += 3) > MOST_LOOPS) return false;
      if (sum + this.most(from, room) < need) return true;
      if (from === this.order.length) {
        found(this.now, capacity - room);
        return true;
      }
      const item = this.order[from]!;
      const width = this.widths[item]!;
      for (let copies = min(this.limits[item]!, floor(room / width)); copies >= 0; copies--) {
        this.now[item] = copies;
        const isWhole = visit(from + 1, room - copies * width, sum + copies * this.values[item]!);
        this.now[item] = 0;
        if (!isWhole) return false;
      }
      return true;
    };
    return visit(0, capacity, 0);
  }

  get steps(): number {
    return this.loops / LOOPS_PER_STEP;
  }
}

/**
 * All patterns that a plan losing at most `target` can hold, found by their reduced losses under exact whole-number duals.
 * Patterns that leave nothing of worth are listed only where no further piece fits: any other can be filled up at no loss.
 * @returns undefined where there are more than `limit` of them, or the search for them is too long
 */
export function patternPool(
  problem: GridProblem,
  exact: ExactBound,
  target: number,
  limit: number,
  work: Work,
): Pattern[] | undefined {
  const { widths, demand, stock } = problem;
  const { scale, duals, reach, scaledBound } = exact;
  const spare = target * scale - scaledBound;
  // What stays uncut of all stock together: no pattern of a plan can waste more.
  const slack =
    stock.reduce((sum, one) => sum + one.count * max(0, one.capacity), 0) -
    demand.reduce((sum, count, item) => sum + count * widths[item]!, 0);
  const items = widths.map((_, item) => item).filter(item => demand[item]! > 0);
  const pool: Pattern[] = [];
  const add = (t: number, counts: Int32Array, width: number) => {
    const used = items.filter(item => counts[item]! > 0);
    pool.push({ stock: t, items: used, counts: used.map(item => counts[item]!), width, loss: lossOf(stock[t]!, width) });
  };
  const listing = (values: Float64Array) => {
    const order = [...items].sort((a, b) => values[b]! / widths[b]! - values[a]! / widths[a]! || a - b);
    return new Listing(order, widths, values, demand);
  };
  const whole = listing(duals);
  const open = listing(duals.map((dual, item) => dual - scale * widths[item]!));
  let isWhole = true;
  for (let t = 0; t < stock.length && isWhole; t++) {
    const one = stock[t]!;
    if (one.count <= 0 || one.capacity <= 0) continue;
    const room = min(one.capacity, one.whole - one.base);
    const most = { closed: reach.closed[t]! + spare, open: reach.open[t]! + spare };
    isWhole = whole.run(one.capacity, one.whole * scale - most.closed, (counts, width) => {
      if (width <= room || width === 0 || one.capacity - width > slack) return;
      const isMaximal = items.every(item => counts[item]! >= demand[item]! || width + widths[item]! > one.capacity);
      if (isMaximal && pool.length <= limit) add(t, counts, width);
    });
    if (isWhole && room > 0) {
      isWhole = open.run(room, one.base * scale - most.open, (counts, width) => {
        if (width > 0 && one.capacity - width <= slack && pool.length <= limit) add(t, counts, width);
      });
    }
    if (pool.length > limit) isWhole = false;
  }
  work.spend(whole.steps + open.steps);
  return isWhole ? pool : undefined;
}
