import { floor, min } from '../arithmetic';

/** Loops after which others may have their turn. */
const LOOPS_A_TURN = 1_000_000;

/** Lists all ways to fill one capacity that are worth at least something. */
export class FillingsList {
  loops = 0;
  private readonly now: Int32Array;
  private readonly room: Float64Array;
  private readonly sum: Float64Array;

  /**
   * @param order items in the order in which they are tried, the most valuable by width first
   * @param mostLoops after so many it is given up
   */
  constructor(
    private readonly order: readonly number[],
    private readonly widths: readonly number[],
    private readonly values: Float64Array,
    private readonly limits: readonly number[],
    private readonly mostLoops: number,
  ) {
    this.now = new Int32Array(widths.length);
    this.room = new Float64Array(order.length + 1);
    this.sum = new Float64Array(order.length + 1);
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

  private set(depth: number, copies: number): void {
    const item = this.order[depth]!;
    this.now[item] = copies;
    this.room[depth + 1] = this.room[depth]! - copies * this.widths[item]!;
    this.sum[depth + 1] = this.sum[depth]! + copies * this.values[item]!;
  }

  /** One piece less of the last item that there is one of; the depth behind it, or −1 where there is none. */
  private back(depth: number): number {
    for (let k = depth - 1; k >= 0; k--) {
      const copies = this.now[this.order[k]!]!;
      if (copies === 0) continue;
      this.set(k, copies - 1);
      return k + 1;
    }
    return -1;
  }

  /**
   * Calls `found` with every filling.
   * @yields now and then
   * @returns false where that takes too long
   */
  *run(capacity: number, need: number, found: (counts: Int32Array, width: number) => void): Generator<void, boolean> {
    this.now.fill(0);
    this.room[0] = capacity;
    let next = this.loops + LOOPS_A_TURN;
    for (let depth = 0; depth >= 0;) {
      if ((this.loops += 3) > this.mostLoops) return false;
      if (this.loops > next) {
        yield;
        next = this.loops + LOOPS_A_TURN;
      }
      const room = this.room[depth]!;
      const isHopeless = this.sum[depth]! + this.most(depth, room) < need;
      if (!isHopeless && depth < this.order.length) {
        const item = this.order[depth]!;
        this.set(depth, min(this.limits[item]!, floor(room / this.widths[item]!)));
        depth++;
        continue;
      }
      if (!isHopeless) found(this.now, capacity - room);
      depth = this.back(depth);
    }
    return true;
  }
}
