import { Decimal } from '../units/decimal';
import { TradeError } from '../tradeError';
import type { CutPlanProblem } from './cutPlan';
import { patternOf, type GridProblem } from './gridProblem';
import { bestFills } from './knapsack';
import { residual } from './residual';
import type { Gridded } from './toGrid';
import { Work } from './work';

/** What stays uncut when the stock is filled one by one in this order, each as full as can be. */
function leftOver(problem: GridProblem, order: readonly number[], pieceLength: (width: number) => number): number[] {
  const work = new Work(Infinity);
  const values = problem.widths.map(pieceLength);
  let rest = problem;
  for (const t of order) {
    while (rest.stock[t]!.count > 0) {
      const fill = bestFills(rest.widths, values, rest.demand, [rest.stock[t]!.capacity], work)[0]!;
      const pattern = patternOf(rest, t, fill.counts);
      if (pattern.width === 0) break;
      const most = Math.min(...pattern.items.map((item, k) => Math.floor(rest.demand[item]! / pattern.counts[k]!)));
      rest = residual(rest, [{ pattern, times: Math.max(1, Math.min(most, rest.stock[t]!.count)) }])!;
    }
  }
  return [...rest.demand];
}

/**
 * The error that says which lengths are short and by how much.
 * @param isCertain false where it is not shown that no plan exists, only that none was found
 */
export function shortageError(problem: CutPlanProblem, gridded: Gridded, isCertain: boolean): TradeError {
  const { grid, pieces, perUnit } = gridded;
  const kerf = problem.kerf.times(perUnit).ceil().toNumber();
  const total = (missing: readonly number[]) => missing.reduce((sum, count, item) => sum + count * grid.widths[item]!, 0);
  const byLength = grid.stock.map((_, t) => t);
  const missing = [byLength, [...byLength].reverse()]
    .map(order => leftOver(grid, order, width => width - kerf))
    .reduce((best, one) => (total(one) < total(best) ? one : best));
  const names = missing.flatMap((count, item) => {
    let left = count;
    return [...pieces[item]!].reverse().flatMap(piece => {
      const part = Math.min(left, piece.quantity);
      left -= part;
      return part > 0 ? [`${part} x ${piece.length}`] : [];
    });
  });
  const length = new Decimal(total(missing)).div(perUnit);
  return isCertain
    ? new TradeError(
        'impossible',
        'stock',
        `is short of ${names.join(' + ')}`,
        `${length} ${problem.unit} with kerf are missing; add stock or cut fewer`,
      )
    : new TradeError(
        'impossible',
        'stock',
        `seems short of ${names.join(' + ')}`,
        `no plan that cuts everything was found; about ${length} ${problem.unit} with kerf are missing; add stock, or allow more seconds`,
      );
}
