import { max, min } from '../arithmetic';
import { Decimal } from '../units/decimal';
import { TradeError } from '../tradeError';
import type { CutPlanProblem } from './cutPlan';
import { commonDivisor, type GridProblem } from './gridProblem';
import type { GridStock } from './gridStock';
import { canStayOpen } from './stockCounts';

/** A problem on the grid and the way back to the user's lengths. */
export interface Gridded {
  readonly grid: GridProblem;
  readonly perUnit: number;
  /** The lengths behind each width, longest first, with the number wanted. */
  readonly pieces: readonly (readonly { length: Decimal; quantity: number }[])[];
  /** The length behind each stock. */
  readonly stock: readonly Decimal[];
  /** Position of each width and each stock on the sheet. */
  readonly sheet: { readonly pieces: readonly number[]; readonly stock: readonly number[] };
}

const MOST_PIECES = 1_000_000;

/** Steps of the grid in one unit of length: 0.1 mm, 1/64 in. */
const GRID = { mm: 10, in: 64 } as const;

interface Merged {
  readonly length: Decimal;
  quantity: number;
  readonly position: number;
}

/** Equal lengths joined, longest first. */
function merged(rows: readonly { length: Decimal; quantity: number }[]): Merged[] {
  const byLength = new Map<string, Merged>();
  rows.forEach(({ length, quantity }, position) => {
    const known = byLength.get(length.toString());
    if (known) known.quantity += quantity;
    else byLength.set(length.toString(), { length, quantity, position });
  });
  return [...byLength.values()].filter(row => row.quantity > 0).sort((a, b) => b.length.cmp(a.length));
}

function gridPieces(problem: CutPlanProblem, perUnit: number, kerf: number) {
  const groups: { width: number; pieces: Merged[] }[] = [];
  for (const piece of merged(problem.pieces)) {
    const width = piece.length.times(perUnit).ceil().toNumber() + kerf;
    const last = groups[groups.length - 1];
    if (last?.width === width) last.pieces.push(piece);
    else groups.push({ width, pieces: [piece] });
  }
  return groups;
}

/** What is the same for all stock, in steps of the grid. */
interface Bench {
  readonly kerf: number;
  readonly squaring: number;
  readonly keep: number | undefined;
  readonly handling: number;
}

function gridStock(length: number, quantity: number, most: number, { kerf, squaring, keep, handling }: Bench): GridStock {
  const isOpenEnded = keep !== undefined;
  const worth = isOpenEnded ? max(0, length - keep) : length;
  return {
    capacity: length - squaring + kerf,
    count: min(quantity, most),
    unlimited: quantity >= most,
    whole: worth + handling,
    base: isOpenEnded && worth > 0 ? squaring + handling : Infinity,
  };
}

/** @throws TradeError `impossible` for a piece longer than every stock */
function checkLengths(problem: CutPlanProblem, grid: GridProblem, groups: readonly { pieces: Merged[] }[]): void {
  const longest = max(-Infinity, ...grid.stock.map(stock => stock.capacity));
  const tooLong = groups.filter((_, item) => grid.widths[item]! > longest).flatMap(group => group.pieces);
  if (tooLong.length === 0) return;
  const names = tooLong.map(piece => `${piece.quantity} x ${piece.length}`).join(' + ');
  const stock = problem.stock.filter(one => one.quantity !== 0).map(one => one.length);
  const best = stock.length > 0 ? `the longest stock is ${Decimal.max(...stock)} ${problem.unit}` : 'there is no stock';
  const squaring = stock.length > 0 && problem.squaring?.gt(0) ? `, ${problem.squaring} of it squared off` : '';
  throw new TradeError(
    'impossible',
    'piece',
    `${names} is longer than every stock`,
    `${best}${squaring}; add ${stock.length > 0 ? 'longer stock' : 'stock'} or check the length`,
  );
}

/**
 * The problem in whole units of the grid.
 * @throws TradeError `impossible` for a piece longer than every stock, `range` for more pieces than can be planned
 */
export function toGrid(problem: CutPlanProblem): Gridded {
  const perUnit = GRID[problem.unit];
  const up = (length = new Decimal(0)) => length.times(perUnit).ceil().toNumber();
  const bench: Bench = {
    kerf: up(problem.kerf),
    squaring: up(problem.squaring),
    keep: problem.keep && up(problem.keep),
    handling: up(problem.handling),
  };
  const groups = gridPieces(problem, perUnit, bench.kerf);
  const demand = groups.map(group => group.pieces.reduce((sum, piece) => sum + piece.quantity, 0));
  const most = demand.reduce((sum, count) => sum + count, 0);
  if (most > MOST_PIECES) {
    throw new TradeError('range', 'quantities', `add up to ${most} pieces`, `plan at most ${MOST_PIECES} at a time`);
  }
  const widths = groups.map(group => group.width);
  const shortest = min(...widths);
  // Stock that no piece fits into is none: counted among the stock, its length would only weaken the bound (see grain).
  const rows = merged(problem.stock.map(row => ({ length: row.length, quantity: row.quantity ?? Infinity }))).flatMap(row => {
    const length = row.length.times(perUnit).floor().toNumber();
    const onGrid = gridStock(length, row.quantity, most, bench);
    return onGrid.capacity < shortest ? [] : [{ ...row, onGrid }];
  });
  const stock = rows.map(({ onGrid }) => onGrid);
  const open = stock.filter(canStayOpen);
  const losses = [...stock.map(one => one.whole), ...open.map(one => one.base), ...(open.length > 0 ? widths : [])];
  const grid: GridProblem = { widths, demand, stock, grain: commonDivisor(losses) || 1 };
  checkLengths(problem, grid, groups);
  return {
    grid,
    perUnit,
    pieces: groups.map(group => group.pieces),
    stock: rows.map(row => row.length),
    sheet: { pieces: groups.map(group => group.pieces[0]!.position), stock: rows.map(row => row.position) },
  };
}
