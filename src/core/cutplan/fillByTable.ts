import { floor, max, min } from '../arithmetic';
import type { Choice, Fill } from './fillChoice';
import { commonDivisor } from './gridProblem';
import type { Work } from './work';

const OTHERS = 30;
const CELLS_PER_STEP = 400;

/** Copies of one width that are taken together. */
interface Part {
  readonly item: number;
  readonly copies: number;
  readonly width: number;
  readonly value: number;
}

/** Copies of a choice bundled by powers of two, so that a table over 0/1 choices covers its limit. */
function bundles(choices: readonly Choice[]): Part[] {
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

/** Taken parts of the last table; kept, since clearing so much memory takes longer than many a table. */
let kept = new Uint8Array(0);

/** A table over all rooms up to the largest capacity: what each can be worth with the parts so far (exact: filled to its end). */
class Table {
  readonly best: Float64Array;
  private readonly cells: number;
  private readonly taken: Uint8Array;

  constructor(
    private readonly parts: readonly Part[],
    largest: number,
    private readonly isExact: boolean,
  ) {
    this.cells = largest + 1;
    this.best = new Float64Array(this.cells);
    if (isExact) this.best.fill(-Infinity, 1);
    if (kept.length < parts.length * this.cells) kept = new Uint8Array(parts.length * this.cells);
    this.taken = kept;
  }

  /**
   * Adds a part.
   * @param filled room that the parts before take together: more of it changes nothing
   */
  add(row: number, filled: number): void {
    const { best, taken, cells } = this;
    const { width, value } = this.parts[row]!;
    const start = row * cells;
    const reach = min(cells - 1, filled + width);
    taken.fill(0, start, start + width);
    for (let at = reach, from = reach - width; from >= 0; at--, from--) {
      const sum = best[from]! + value;
      if (sum > best[at]!) {
        best[at] = sum;
        taken[start + at] = 1;
      } else taken[start + at] = 0;
    }
    if (reach < cells - 1) {
      if (!this.isExact) best.fill(best[reach]!, reach + 1);
      taken.fill(this.isExact ? 0 : 1, start + reach + 1, start + cells);
    }
  }

  isTaken(row: number, room: number): boolean {
    return this.taken[row * this.cells + room] === 1;
  }

  /** The filling behind a room, of the parts up to a row. */
  filling(last: number, room: number, size: number): Int32Array {
    const counts = new Int32Array(size);
    for (let row = last, at = room; row >= 0; row--) {
      if (!this.isTaken(row, at)) continue;
      counts[this.parts[row]!.item]! += this.parts[row]!.copies;
      at -= this.parts[row]!.width;
    }
    return counts;
  }
}

function partsOf(choices: readonly Choice[]): { unit: number; parts: Part[] } {
  const unit = commonDivisor(choices.map(choice => choice.width));
  return { unit, parts: mixed(bundles(choices)).map(part => ({ ...part, width: part.width / unit })) };
}

/**
 * The best fillings by a table over all rooms (dynamic programming).
 * @param size number of widths there are
 */
export function fillByTable(choices: readonly Choice[], capacities: readonly number[], size: number, work: Work): Fill[] {
  const { unit, parts } = partsOf(choices);
  const all = parts.reduce((sum, part) => sum + part.width, 0);
  const ends = capacities.map(capacity => min(all, floor(max(0, capacity) / unit)));
  const largest = max(...ends);
  const table = new Table(parts, largest, false);
  const improved: number[] = [];
  let filled = 0;
  parts.forEach((part, row) => {
    table.add(row, filled);
    filled += part.width;
    if (ends.length === 1 && table.isTaken(row, largest)) improved.push(row);
    work.spend(min(filled, largest) / CELLS_PER_STEP);
  });
  const last = parts.length - 1;
  // Only a single capacity's other fillings are asked for.
  const others = improved.slice(-OTHERS - 1, -1).map(row => table.filling(row, largest, size));
  return ends.map(end => {
    const value = table.best[end]!;
    return { value, upper: value, counts: table.filling(last, end, size), others };
  });
}

/**
 * The best fillings whose width lies in a range each, by a table over all widths.
 * @returns value and `upper` are −Infinity where there is none
 */
export function fillByExactWidth(
  choices: readonly Choice[],
  ranges: readonly { readonly above: number; readonly upTo: number }[],
  size: number,
  work: Work,
): Fill[] {
  const { unit, parts } = partsOf(choices);
  const largest = floor(max(0, ...ranges.map(range => range.upTo)) / unit);
  const table = new Table(parts, largest, true);
  let filled = 0;
  parts.forEach((part, row) => {
    table.add(row, filled);
    filled += part.width;
  });
  work.spend((parts.length * largest) / CELLS_PER_STEP);
  return ranges.map(({ above, upTo }) => {
    let best = max(0, floor(above / unit) + 1);
    for (let width = best; width <= floor(upTo / unit); width++) if (table.best[width]! > table.best[best]!) best = width;
    const value = best <= floor(upTo / unit) ? table.best[best]! : -Infinity;
    const counts = value === -Infinity ? new Int32Array(size) : table.filling(parts.length - 1, best, size);
    return { value, upper: value, counts };
  });
}
