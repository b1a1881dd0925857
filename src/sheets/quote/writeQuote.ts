import { dayNumber } from '../../core/catalogue/dayNumber';
import type { Workbook } from '../../workbook/workbook';
import { freeSheetName } from '../print/freeSheetName';
import type { RowProblem } from '../table/rowProblem';
import { priceFormat } from '../catalogue/priceFormat';
import { rateCell } from '../catalogue/rateCell';
import { guardPrices } from '../catalogue/guardPrices';
import { lineCautions } from './lineCautions';
import { marginsOfWorkbook, type MarginTable } from './marginTable';
import { missingRatesFormula } from '../catalogue/missingRates';
import { pickedLines } from '../jobs/pickedLines';
import type { QuoteLines } from '../jobs/quoteLine';
import { quoteSheet } from './quoteSheet';
import type { QuoteSettings } from './quoteSettings';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';

/** What the workbook gives to a quote before anything is typed. */
export interface QuoteSources {
  readonly margins: MarginTable | undefined;
  /** Number format of prices; undefined where no price column has one. */
  readonly format: string | undefined;
}

/** A quote that was written. */
export interface WrittenQuote {
  readonly sheet: string;
  readonly read: QuoteLines;
  /** Lines that should not be made as they stand. */
  readonly cautions: readonly RowProblem[];
}

/** Looks for the table of margins and for how the workbook writes prices. */
export async function quoteSources(workbook: Workbook): Promise<QuoteSources> {
  return { margins: await marginsOfWorkbook(workbook), format: await priceFormat(workbook) };
}

/**
 * Writes a quote for the selected job lines as a new sheet, in one batch.
 * @param today as `2026-10-05`
 */
export async function writeQuote(
  workbook: Workbook,
  settings: QuoteSettings,
  margins: MarginTable | undefined,
  today: string,
): Promise<WrittenQuote> {
  const found = await workbookCatalogue(workbook);
  const { units, handle } = found.catalogue;
  const read = await pickedLines(workbook, units.length);
  const sheet = freeSheetName('Quote', await workbook.sheets(), today);
  const changes = quoteSheet({
    sheet,
    jobSheet: read.sheet,
    lines: read.lines,
    settings,
    catalogue: found.reference,
    handle,
    lengthUnit: units.length.symbol,
    guards: guardPrices(found),
    margins,
    minimumRate: rateCell(found, 'minimum charge'),
    missingRates: missingRatesFormula(found),
    today: dayNumber(today)!,
  });
  await workbook.write(changes);
  return { sheet, read, cautions: lineCautions(found.catalogue, read.lines) };
}
