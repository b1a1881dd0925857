import { assembly } from '../../core/catalogue/assembly';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { unitCost } from '../../core/catalogue/unitCost';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { RowProblem } from '../table/rowProblem';
import type { QuoteLine } from '../jobs/quoteLine';

function refusal(work: () => readonly string[]): readonly string[] {
  try {
    return work();
  } catch (error) {
    if (error instanceof TradeError) return [error.message];
    throw error;
  }
}

/** What is wrong with the assembly, and what keeps its cost from being known (a price or a rate). */
function wrongWith(catalogue: Catalogue, { hose, fittingA, fittingB, overall, quantity }: QuoteLine): readonly string[] {
  const made = refusal(() => assembly(catalogue, hose, fittingA, fittingB, overall).wrong);
  const costed = refusal(() => {
    unitCost(catalogue, hose, [fittingA, fittingB], overall, new Decimal(quantity));
    return [];
  });
  return [...new Set([...made, ...costed])];
}

/** Lines that should not be made or sent as they stand, each with the reason: a price is no approval. */
export function lineCautions(catalogue: Catalogue, lines: readonly QuoteLine[]): readonly RowProblem[] {
  return lines.flatMap(line => {
    const wrong = wrongWith(catalogue, line);
    return wrong.length > 0 ? [{ row: line.row, sentence: wrong.join('; ') }] : [];
  });
}
