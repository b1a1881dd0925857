import { assembly } from '../../core/catalogue/assembly';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { TradeError } from '../../core/tradeError';
import type { RowProblem } from '../sheets/rowProblem';
import type { QuoteLine } from './quoteLine';

function wrongWith(catalogue: Catalogue, { hose, fittingA, fittingB, overall }: QuoteLine): readonly string[] {
  try {
    return assembly(catalogue, hose, fittingA, fittingB, overall).wrong;
  } catch (error) {
    if (error instanceof TradeError) return [error.message];
    throw error;
  }
}

/** Lines that should not be made as they stand, each with the reason: a price is no approval. */
export function lineCautions(catalogue: Catalogue, lines: readonly QuoteLine[]): readonly RowProblem[] {
  return lines.flatMap(line => {
    const wrong = wrongWith(catalogue, line);
    return wrong.length > 0 ? [{ row: line.row, sentence: wrong.join('; ') }] : [];
  });
}
