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

/** Opened stock with room for a piece, in the order in which such pieces fill it: what takes one piece goes on taking them until it is full. */
function withRoom(opened: readonly OpenStock[], width: number, place: GreedyOrder['place']): OpenStock[] {
  const roomy = opened.filter(one => one.room >= width);
  return place === 'first' ? roomy : roomy.sort((a, b) => a.room - b.room);
}

/**
 * Cuts piece by piece: into the first (or tightest) stock already opened that has room, else from the next piece of stock in order
 * that is long enough. Equal pieces are placed together, which comes to the same and takes no longer for many than for few.
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
    let wanted = demand[item]!;
    const fill = (one: OpenStock) => {
      const pieces = Math.min(wanted, Math.floor(one.room / width));
      one.room -= pieces * width;
      one.counts[item]! += pieces;
      wanted -= pieces;
    };
    for (const one of wanted > 0 ? withRoom(opened, width, order.place) : []) fill(one);
    while (wanted > 0) {
      const next = stockOrder.find(t => left[t]! > 0 && stock[t]!.capacity >= width);
      if (next === undefined) return undefined;
      left[next]!--;
      const one = { stock: next, room: stock[next]!.capacity, counts: new Int32Array(widths.length) };
      opened.push(one);
      fill(one);
    }
  }
  const uses: PatternUse[] = opened.map(one => ({ pattern: patternOf(problem, one.stock, one.counts), times: 1 }));
  return planOf(problem, uses);
}
