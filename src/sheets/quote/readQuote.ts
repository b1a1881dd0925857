import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';
import { fixed, SETTING_LABELS, type QuoteColumn, type QuoteSetting } from './quoteLayout';
import { FORMER_WORKING_TITLE, HEADINGS, SHEET_TITLE, WORKING_TITLE } from './quoteWords';
import type { PriceMethod } from './quoteSettings';
import { sheetInFormula } from '../../workbook/a1';

/** A quote as it stands on its sheet; people may have moved or added columns and rows. */
export interface ReadQuote {
  readonly sheet: string;
  /** The sheet with its costs and margin. */
  readonly costs: string;
  readonly customer: string;
  /** Day number; undefined where the cell holds none. */
  readonly validUntil: number | undefined;
  readonly method: PriceMethod;
  /** Rows of the lines, from 0 on the sheet. */
  readonly rows: readonly number[];
  has(column: QuoteColumn): boolean;
  /** What stands over a column: `Overall length (mm)`. */
  heading(column: QuoteColumn): string;
  /** Value of a line's cell. */
  value(column: QuoteColumn, row: number): CellValue;
  /** A line's cell as a formula of another sheet names it: `Quote!$C$13`. */
  cell(column: QuoteColumn, row: number): string;
  /** The cell of a setting, named in the same way. */
  setting(name: QuoteSetting): string;
}

const NEEDED: readonly QuoteColumn[] = ['hose', 'fittingA', 'fittingB', 'quantity', 'each', 'lineTotal'];

/** First sheet that a formula names. */
const OTHER_SHEET = /^=[^"!]*?(?:'((?:[^']|'')+)'|([\p{L}\p{N}_.]+))!\$/u;

/** Headings that have a unit behind them. */
const WITH_UNIT = [
  ['overall', /^Overall length\b/],
  ['pressure', /^Working pressure\b/],
  ['temperature', /^Temperature\b/],
] as const;

function columnsOf(row: readonly CellValue[]): ReadonlyMap<QuoteColumn, number> {
  const columns = new Map<QuoteColumn, number>();
  for (const [column, heading] of Object.entries(HEADINGS) as [QuoteColumn, string][]) {
    const index = row.indexOf(heading);
    if (index >= 0) columns.set(column, index);
  }
  for (const [column, words] of WITH_UNIT) {
    const index = row.findIndex(cell => typeof cell === 'string' && words.test(cell));
    if (index >= 0) columns.set(column, index);
  }
  return columns;
}

function settingsOf({ values }: RangeContent): ReadonlyMap<QuoteSetting, readonly [row: number, column: number]> {
  const found = new Map<QuoteSetting, readonly [number, number]>();
  const isTitle = (cell: CellValue) => cell === WORKING_TITLE || cell === FORMER_WORKING_TITLE;
  const top = values.findIndex(row => row.some(isTitle));
  const column = top < 0 ? -1 : values[top]!.findIndex(isTitle);
  for (const [setting, label] of Object.entries(SETTING_LABELS) as [QuoteSetting, string][]) {
    const row = values.findIndex((cells, index) => index > top && cells[column] === label);
    if (row >= 0) found.set(setting, [row, column + 1]);
  }
  return found;
}

/** What stands beside a label in the first column, two columns on. */
function beside({ values }: RangeContent, label: string): CellValue {
  return values.find(row => row[0] === label)?.[2] ?? '';
}

/** Row of the headings; -1 where the sheet is no quote. */
const headOf = ({ values }: RangeContent): number =>
  values[0]?.[0] === SHEET_TITLE ? values.findIndex(row => NEEDED.every(column => columnsOf(row).has(column))) : -1;

/** The sheet that a quote's prices take their costs from; its own one in quotes of earlier versions. */
function costsSheetOf(content: RangeContent): string | undefined {
  const head = headOf(content);
  if (head < 0) return undefined;
  const columns = columnsOf(content.values[head]!);
  if (columns.has('cost')) return content.sheet;
  const [, quoted, plain] = OTHER_SHEET.exec(content.formulas[head + 1]?.[columns.get('each')!] ?? '') ?? [];
  return quoted?.replace(/''/g, "'") ?? plain;
}

/**
 * Reads a quote that this pane has written; undefined where the sheet is none.
 * @param costs the sheet with its costs and margin
 */
function readQuote(content: RangeContent, costs: RangeContent): ReadQuote | undefined {
  const { values, sheet, row: top, column: left } = content;
  const head = headOf(content);
  const settings = settingsOf(costs);
  if (head < 0 || !settings.has('roundTo')) return undefined;
  const columns = columnsOf(values[head]!);
  const rows: number[] = [];
  for (let row = head + 1; row < values.length && values[row]![columns.get('hose')!] !== ''; row++) rows.push(row);
  const named = (row: number, column: number) => `${sheetInFormula(sheet)}!${fixed(top + row, left + column)}`;
  const validUntil = beside(content, 'Valid until');
  return {
    sheet,
    costs: costs.sheet,
    customer: String(beside(content, 'Customer')),
    validUntil: typeof validUntil === 'number' ? validUntil : undefined,
    method: settings.has('margin') ? 'margin' : 'markup',
    rows,
    has: column => columns.has(column),
    heading: column => String(values[head]![columns.get(column)!]),
    value: (column, row) => values[row]![columns.get(column)!]!,
    cell: (column, row) => named(row, columns.get(column)!),
    setting: name => {
      const [row, column] = settings.get(name)!;
      return `${sheetInFormula(costs.sheet)}!${fixed(costs.row + row, costs.column + column)}`;
    },
  };
}

/** A quote with the content of its sheet. */
export interface QuoteOfSheet {
  readonly content: RangeContent;
  readonly quote: ReadQuote;
}

/** The quote that a sheet holds; undefined where it holds none, or where the sheet with its costs is gone. */
export async function quoteOfSheet(workbook: Workbook, sheet: string): Promise<QuoteOfSheet | undefined> {
  const content = await workbook.used(sheet);
  const named = content && costsSheetOf(content);
  if (!content || named === undefined) return undefined;
  const costs = named === sheet ? content : (await workbook.sheets()).includes(named) ? await workbook.used(named) : undefined;
  const quote = costs && readQuote(content, costs);
  return quote && quote.rows.length > 0 ? { content, quote } : undefined;
}

/** All quotes of a workbook, in the order of its sheets. */
export async function quotesOfWorkbook(workbook: Workbook): Promise<readonly ReadQuote[]> {
  const quotes: ReadQuote[] = [];
  for (const sheet of await workbook.sheets()) {
    const found = await quoteOfSheet(workbook, sheet);
    if (found) quotes.push(found.quote);
  }
  return quotes;
}
