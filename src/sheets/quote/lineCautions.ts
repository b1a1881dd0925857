import type { Catalogue } from '../../core/catalogue/catalogue';
import { findGuard } from '../../core/catalogue/findGuard';
import { findHose } from '../../core/catalogue/findPart';
import { unitCost } from '../../core/catalogue/unitCost';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { QuoteLine } from '../jobs/quoteLine';
import { isPlainHose } from './plainHose';
import type { RowProblem } from '../table/rowProblem';

/** What keeps the cost of a line from being known: a price or a rate that is missing. */
function unknownCost(catalogue: Catalogue, line: QuoteLine): string | undefined {
  const { hose, fittingA, fittingB, overall, quantity, guard } = line;
  try {
    if (isPlainHose(line)) {
      const found = findHose(catalogue, hose);
      const unpriced = [found, ...(guard ? [findGuard(catalogue, guard, found)] : [])].find(
        part => part.pricePerLength === undefined,
      );
      return unpriced && `price of ${'hose' in unpriced ? unpriced.hose : unpriced.guard} is missing: enter it in the catalogue`;
    }
    unitCost(catalogue, hose, [fittingA, fittingB], overall, new Decimal(quantity), guard || undefined);
    return undefined;
  } catch (error) {
    if (error instanceof TradeError) return error.message;
    throw error;
  }
}

/** Lines whose cost is not known, each with the reason. Whether a line may be made is its standing, not asked again here. */
export function lineCautions(catalogue: Catalogue, lines: readonly QuoteLine[]): readonly RowProblem[] {
  return lines.flatMap(line => {
    const sentence = unknownCost(catalogue, line);
    return sentence === undefined ? [] : [{ row: line.row, sentence }];
  });
}
