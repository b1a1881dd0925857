import { ceil, floor, min } from '../arithmetic';
import { lossOf, type GridPlan, type GridProblem, type PatternUse } from './gridProblem';
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

/** Opened pieces of stock that hold the same cuts. */
interface OpenStock {
  readonly stock: number;
  readonly times: number;
  readonly room: number;
  readonly cuts: readonly (readonly [item: number, count: number])[];
}

/** Some of them with further pieces. */
function filled(one: OpenStock, times: number, item: number, width: number, count: number): OpenStock[] {
  if (times === 0 || count === 0) return times === 0 ? [] : [{ ...one, times }];
  return [{ ...one, times, room: one.room - count * width, cuts: [...one.cuts, [item, count]] }];
}

/** Fills pieces of stock that hold the same cuts, one after the other to its end, with up to `wanted` pieces. */
function fill(one: OpenStock, item: number, width: number, wanted: number): { opened: OpenStock[]; cut: number } {
  const each = floor(one.room / width);
  const full = min(one.times, floor(wanted / each));
  const last = full < one.times ? wanted - full * each : 0;
  const opened = filled(one, full, item, width, each);
  if (last > 0) opened.push(...filled(one, 1, item, width, last));
  opened.push(...filled(one, one.times - full - (last > 0 ? 1 : 0), item, width, 0));
  return { opened, cut: full * each + last };
}

/** Fills opened stock that has room, in the order of `place`: what takes one piece goes on taking them until it is full. */
function fillOpened(opened: OpenStock[], item: number, width: number, wanted: number, place: GreedyOrder['place']) {
  const order = opened.map((_, k) => k).filter(k => opened[k]!.room >= width);
  if (place === 'tightest') order.sort((a, b) => opened[a]!.room - opened[b]!.room);
  const parts = new Map<number, OpenStock[]>();
  let left = wanted;
  for (const k of order) {
    if (left === 0) break;
    const { opened: part, cut } = fill(opened[k]!, item, width, left);
    parts.set(k, part);
    left -= cut;
  }
  return { opened: parts.size > 0 ? opened.flatMap((one, k) => parts.get(k) ?? one) : opened, left };
}

function useOf({ widths, stock }: GridProblem, { stock: t, times, cuts }: OpenStock): PatternUse {
  const byWidth = [...cuts].sort((a, b) => a[0] - b[0]);
  const width = byWidth.reduce((sum, [item, count]) => sum + count * widths[item]!, 0);
  const [items, counts] = [byWidth.map(([item]) => item), byWidth.map(([, count]) => count)];
  return { pattern: { stock: t, items, counts, width, loss: lossOf(stock[t]!, width) }, times };
}

/**
 * Cuts piece by piece: into the first (or tightest) stock already opened that has room, else from the next piece of stock in order
 * that is long enough. Equal pieces, and pieces of stock that hold the same, are dealt with together, which comes to the same and takes no
 * longer for many than for few.
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
  let stockOrder = ordered(stock.length, order.stock, t => stock[t]!.capacity, sheet.stock);
  const narrowest = min(...widths.filter((_, item) => demand[item]! > 0));
  const full: OpenStock[] = [];
  let opened: OpenStock[] = [];
  for (const item of ordered(widths.length, order.pieces, i => widths[i]!, sheet.pieces)) {
    const width = widths[item]!;
    if (demand[item]! <= 0) continue;
    const begun = fillOpened(opened, item, width, demand[item]!, order.place);
    opened = begun.opened;
    let wanted = begun.left;
    for (const t of wanted > 0 ? stockOrder : []) {
      const { capacity } = stock[t]!;
      if (left[t]! <= 0 || capacity < width) continue;
      const times = min(left[t]!, ceil(wanted / floor(capacity / width)));
      const next = fill({ stock: t, times, room: capacity, cuts: [] }, item, width, wanted);
      opened.push(...next.opened);
      left[t]! -= times;
      wanted -= next.cut;
      if (wanted === 0) break;
    }
    if (wanted > 0) return undefined;
    stockOrder = stockOrder.filter(t => left[t]! > 0);
    full.push(...opened.filter(one => one.room < narrowest));
    opened = opened.filter(one => one.room >= narrowest);
  }
  return planOf(
    problem,
    [...full, ...opened].map(one => useOf(problem, one)),
  );
}
