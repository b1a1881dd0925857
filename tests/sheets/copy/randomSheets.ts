import { shown } from '../../host/customFunctions';
import type { FakeCell } from '../../workbook/fakeWorkbook';

/** Equal numbers on every run (mulberry32, a public-domain generator by Tommy Ettinger). */
export function randomOf(seed: number) {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const pick = <T>(items: readonly T[]): T => items[Math.floor(next() * items.length)]!;
  return {
    next,
    pick,
    /** A number with so many decimals. */
    number: (from: number, to: number, decimals = 1) => Number((from + next() * (to - from)).toFixed(decimals)),
    /** One of the odd things in so many of a hundred cases, else the usual one. */
    oddly: <T>(percent: number, usual: () => T, ...odd: readonly T[]): T => (next() * 100 < percent ? pick(odd) : usual()),
  };
}

export type Random = ReturnType<typeof randomOf>;
type Input = string | number | boolean | null;

/** A function of ours on rows of random cells. */
export interface RandomFunction {
  readonly id: string;
  /** Cells of one row. */
  inputs(random: Random): readonly Input[];
  /** What the formula is given in row `r`. */
  arguments(r: number): readonly string[];
  /** Our function on the same cells. */
  ours(cells: readonly Input[]): any[][];
}

/** A result's row as the sheet shows it. */
function shownRow(result: () => any[][]): FakeCell[] {
  try {
    return shown(result())[0]!.map(cell => {
      const text = String(cell);
      const code = /^#[A-Z0-9/]+[!?]?/.exec(text)?.[0];
      return code ? { error: code } : (cell as FakeCell);
    });
  } catch {
    // An error of the whole call stands in its one cell.
    return [{ error: '#VALUE!' }];
  }
}

/** A sheet with the rows and, from column `first` on, the results. */
export function randomSheet({ id, inputs, arguments: texts, ours }: RandomFunction, seed: number, rows: number): FakeCell[][] {
  const random = randomOf(seed);
  return Array.from({ length: rows }, (_, index) => {
    const cells = inputs(random);
    const [first, ...rest] = shownRow(() => ours(cells));
    const formula = `=HOSE.${id}(${texts(index + 1).join(',')})`;
    return [...cells.map(cell => (cell === null ? '' : cell)), { formula, value: first! } as FakeCell, ...rest];
  });
}
