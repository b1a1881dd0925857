import { min } from '../arithmetic';
import { Decimal } from '../units/decimal';
import { TradeError } from '../tradeError';
import type { CutPlanProblem } from './cutPlan';
import { commonDivisor, type GridProblem } from './gridProblem';
import { solveGrid } from './solveGrid';
import type { Gridded } from './toGrid';
import type { Work } from './work';

/** Pieces of each width that cannot be cut. */
export interface Shortage {
  readonly missing: readonly number[];
  /** True where it is shown that no less hose can be missing. */
  readonly isLeast: boolean;
}

const lengthOf = ({ widths }: GridProblem, missing: readonly number[]) =>
  missing.reduce((sum, count, item) => sum + count * widths[item]!, 0);

/** The same pieces and stock, where cutting costs nothing, but every piece can be had elsewhere at its length. */
function withPiecesToBuy({ widths, demand, stock }: GridProblem): GridProblem {
  const bought = widths.map((width, item) => ({
    capacity: width,
    count: demand[item]!,
    unlimited: true,
    whole: width,
    base: Infinity,
  }));
  return {
    widths,
    demand,
    stock: [...stock.map(one => ({ ...one, whole: 0, base: Infinity })), ...bought],
    grain: commonDivisor(widths) || 1,
  };
}

/**
 * The least hose that is missing, with kerf, where the stock is not enough: the cutting problem once more, where pieces can be had
 * from elsewhere.
 * @yields often, so that the caller can let others work or stop the search
 */
export function* findShortage({ grid, sheet }: Gridded, work: Work): Generator<void, Shortage> {
  const first = grid.stock.length;
  const places = { pieces: sheet.pieces, stock: [...sheet.stock, ...grid.widths.map((_, item) => first + item)] };
  const steps = solveGrid(withPiecesToBuy(grid), places, work);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield;
  const { best, bound } = step.value;
  const missing = grid.widths.map(() => 0);
  for (const { pattern, times } of best?.uses ?? []) {
    if (pattern.stock >= first) pattern.items.forEach((item, k) => (missing[item]! += times * pattern.counts[k]!));
  }
  return { missing, isLeast: bound >= lengthOf(grid, missing) };
}

/**
 * The error that says which lengths are short and by how much.
 * @param isCertain false where it is not shown that no plan exists, only that none was found
 */
export function shortageError(
  problem: CutPlanProblem,
  { grid, pieces, perUnit }: Gridded,
  { missing, isLeast }: Shortage,
  isCertain: boolean,
): TradeError {
  const names = missing.flatMap((count, item) => {
    let left = count;
    return [...pieces[item]!].reverse().flatMap(piece => {
      const part = min(left, piece.quantity);
      left -= part;
      return part > 0 ? [`${part} x ${piece.length}`] : [];
    });
  });
  if (names.length === 0) {
    const found = 'no plan was found, though the stock may be enough';
    return new TradeError('unsettled', 'stock', 'is very tight', `${found}: allow more seconds, or add stock`);
  }
  const length = `${new Decimal(lengthOf(grid, missing)).div(perUnit)} ${problem.unit} with kerf are missing`;
  return isCertain
    ? new TradeError(
        'impossible',
        'stock',
        `is short of ${names.join(' + ')}`,
        `${isLeast ? '' : 'at most '}${length}; add stock or cut fewer`,
      )
    : new TradeError(
        'unsettled',
        'stock',
        `seems short of ${names.join(' + ')}`,
        `no plan that cuts everything was found; at most ${length}; add stock, or allow more seconds`,
      );
}
