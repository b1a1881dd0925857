import { dayNumber } from '../../core/units/sheetDate';
import type { Workbook } from '../../workbook/workbook';
import { freeSheetName } from '../print/freeSheetName';
import { cutLengthFormat } from '../table/numberFormats';
import type { RowProblem } from '../table/rowProblem';
import { priceFormat } from '../catalogue/priceFormat';
import { deratedHoses } from '../catalogue/deratedHoses';
import { ratingDecimals } from '../catalogue/ratingDecimals';
import { rateNumber } from '../catalogue/rateNumber';
import { heldSentences } from './heldSentences';
import { lineCautions } from './lineCautions';
import { marginsOfWorkbook, type MarginTable } from './marginTable';
import { missingRatesFormula } from '../catalogue/missingRates';
import { quoteLines, type QuoteLines, type QuoteLineWishes } from '../jobs/quoteLine';
import { plainHoseCost } from './plainHose';
import { quoteSheet } from './quoteSheet';
import type { QuoteSettings } from './quoteSettings';
import { usableCatalogue } from '../catalogue/usableCatalogue';

/** What the workbook gives to a quote before anything is typed. */
export interface QuoteSources {
  readonly margins: MarginTable | undefined;
  /** Number format of prices; undefined where no price column has one. */
  readonly format: string | undefined;
}

/** A quote that was written. */
export interface WrittenQuote {
  readonly sheet: string;
  /** The sheet with its costs and margin. */
  readonly costs: string;
  readonly read: QuoteLines;
  /** Cells that were copied though the lines follow the job sheet, as sentences. */
  readonly held: readonly string[];
  /** Lines of it without a price. */
  readonly cautions: readonly RowProblem[];
}

/** Looks for the table of margins and for how the workbook writes prices. */
export async function quoteSources(workbook: Workbook): Promise<QuoteSources> {
  return { margins: await marginsOfWorkbook(workbook), format: await priceFormat(workbook) };
}

/** A quote does not ask what has been made of its lines. */
export const quoteWishes = (wishes: QuoteLineWishes): QuoteLineWishes => ({ ...wishes, whateverStatus: true, isPriced: true });

/**
 * Writes a quote for the selected job lines as new sheets, in one batch; lines that must not be made are not in it.
 * @param today as `2026-10-05`
 * @param wishes which lines are wanted
 */
export async function writeQuote(
  workbook: Workbook,
  settings: QuoteSettings,
  margins: MarginTable | undefined,
  today: string,
  wishes: QuoteLineWishes = {},
): Promise<WrittenQuote> {
  const found = await usableCatalogue(workbook);
  const { units, handle } = found.catalogue;
  const read = await quoteLines(workbook, units.length, quoteWishes(wishes));
  const taken = await workbook.sheets();
  const sheet = freeSheetName('Quote', taken, today);
  const costs = freeSheetName(`${sheet} costs`, taken, today);
  const changes = quoteSheet({
    sheets: { quote: sheet, costs },
    lines: read.lines,
    notQuoted: read.stops.map(({ line }) => line),
    settings,
    catalogue: found.reference,
    handle,
    lengthUnit: units.length.symbol,
    lengthFormat: cutLengthFormat(units.length.symbol, wishes.step),
    pressureUnit: units.pressure.symbol,
    temperatureUnit: units.temperature?.symbol,
    deratedHoses: deratedHoses(found),
    ratingDecimals: ratingDecimals(found.catalogue),
    plainHose: plainHoseCost(found),
    margins,
    minimumRate: rateNumber(found, 'minimum charge'),
    missingRates: missingRatesFormula(found),
    today: dayNumber(today)!,
  });
  await workbook.write(changes);
  const held = settings.isLinked ? heldSentences(read.lines) : [];
  return { sheet, costs, read, held, cautions: lineCautions(found.catalogue, read.lines) };
}
