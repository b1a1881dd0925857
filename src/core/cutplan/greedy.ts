import { patternOf, type GridPlan, type GridProblem, type PatternUse } from './gridProblem';
import { planOf } from './residual';

/** Order in which pieces are taken, stock is opened, and how a piece finds its place. */
export interface GreedyOrder {
  readonly pieces: 'longest' | 'shortest' | 'sheet';
  readonly stock: 'longest' | 'shortest' | 'sheet';
  readonly place: 'first' | 'tightest';
}

const PIECES = ['longest', 'sheet', 'shortest'] as const;
const STOCK = ['longest', 'shortest', 'sheet'] as const;

/** All greedy orders: three of pieces, three of stock, first place or tightest place. */
export const GREEDY_ORDERS: readonly GreedyOrder[] = PIECES.flatMap(pieces =>
  STOCK.flatMap(stock => (['first', 'tightest'] as const).map(place => ({ pieces, stock, place }))),
);

function ordered(count: number, order: 'longest' | 'shortest' | 'sheet', size: (k: number) => number, sheet: readonly number[]) {
  const all = Array.from({ length: count }, (_, k) => k);
  if (order === 'longest') return all.sort((a, b) => size(b) - size(a));
  if (order === 'shortest') return all.sort((a, b) => size(a) - size(b));
  return all.sort((a, b) => sheet[a]! - sheet[b]!);
}

interface OpenStock {
  readonly stock: number;
  room: number;
  readonly counts: Int32Array;
}

/**
 * Cuts piece by piece: into the first (or tightest) stock already opened that has room, else from the next piece of stock in order
 * that is long enough.
 * @param sheet position of each width and each stock on the user's sheet
 * @returns undefined where the stock runs out
 */
export function greedyPlan(
  problem: GridProblem,
  order: GreedyOrder,
  sheet: { pieces: readonly number[]; stock: readonly number[] },
): GridPlan | undefined {
  const { widths, demand, stock } = problem;
  const left = stock.map(one => one.count);
  const stockOrder = ordered(stock.length, order.stock, t => stock[t]!.capacity, sheet.stock);
  const opened: OpenStock[] = [];
  for (const item of ordered(widths.length, order.pieces, i => widths[i]!, sheet.pieces)) {
    const width = widths[item]!;
    for (let piece = 0; piece < demand[item]!; piece++) {
      let place: OpenStock | undefined;
      for (const one of opened) {
        if (one.room < width) continue;
        if (!place || one.room < place.room) place = one;
        if (order.place === 'first') break;
      }
      if (!place) {
        const next = stockOrder.find(t => left[t]! > 0 && stock[t]!.capacity >= width);
        if (next === undefined) return undefined;
        left[next]!--;
        place = { stock: next, room: stock[next]!.capacity, counts: new Int32Array(widths.length) };
        opened.push(place);
      }
      place.room -= width;
      place.counts[item]!++;
    }
  }
  const uses: PatternUse[] = opened.map(one => ({ pattern: patternOf(problem, one.stock, one.counts), times: 1 }));
  return planOf(problem, uses);
}
