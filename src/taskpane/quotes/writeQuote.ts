import { partKey } from '../../core/catalogue/partName';
import { rateKey } from '../../core/catalogue/duplicates';
import { dayNumber } from '../../core/catalogue/dayNumber';
import type { Workbook } from '../../workbook/workbook';
import { freeSheetName } from '../sheets/freeSheetName';
import type { RowProblem } from '../sheets/rowProblem';
import { currencyFormatOf } from './currencyFormat';
import { guardPrices } from './guardPrices';
import { lineCautions } from './lineCautions';
import { marginsOfWorkbook, type MarginTable } from './marginTable';
import { missingRatesFormula } from './missingRates';
import { pickedLines } from './pickedLines';
import type { QuoteLines } from './quoteLine';
import { quoteSheet } from './quoteSheet';
import type { QuoteSettings } from './quoteSettings';
import { TablePlace } from './tablePlace';
import { fixedReference, workbookCatalogue, type WorkbookCatalogue } from './workbookCatalogue';

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

/** How the workbook writes prices: the selected sheet first, then the catalogue's usual sheets. */
export async function priceFormat(workbook: Workbook): Promise<string | undefined> {
  const selection = await workbook.selection();
  const sheets = [selection.sheet, ...(await workbook.sheets()).filter(name => /^(?:hoses|fittings|guards)$/i.test(name))];
  for (const sheet of sheets) {
    const format = currencyFormatOf(await workbook.used(sheet));
    if (format) return format;
  }
  return undefined;
}

/** Looks for the table of margins and for how the workbook writes prices. */
export async function quoteSources(workbook: Workbook): Promise<QuoteSources> {
  return { margins: await marginsOfWorkbook(workbook), format: await priceFormat(workbook) };
}

/** The cell of a rate, as a formula names it. */
export function rateCell({ tables }: WorkbookCatalogue, rate: string): string | undefined {
  if (!tables.rates) return undefined;
  const place = new TablePlace(tables.rates);
  const [names, values] = [place.column('Rate'), place.column('Value')];
  if (names === undefined || values === undefined) return undefined;
  const row = place.dataRows().find(at => rateKey(partKey(String(tables.rates!.values[at]![names]))) === rateKey(rate));
  return row === undefined ? undefined : fixedReference(place.cell(row, values));
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
