import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { addressOf } from '../../workbook/a1';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { countOfCell, lengthOfCell } from '../table/lengthCell';
import { either, JOB_WORDS } from '../table/jobWords';
import type { RowProblem } from '../table/rowProblem';
import { cellOf, dataRows, findTable, sheetRow, textOf, type SheetTable } from '../table/sheetTable';
import { NothingToQuote } from '../catalogue/nothingToQuote';

const JOB_HEADINGS = {
  hose: JOB_WORDS.hose,
  fittingA: either(JOB_WORDS.fittingA, /^(?:fitting|coupling)$/),
  fittingB: JOB_WORDS.fittingB,
  overall: JOB_WORDS.overall,
  quantity: JOB_WORDS.quantity,
  line: JOB_WORDS.line,
  label: /^(?:label|wanted for|for|assembly no\.?|description|mark|name)$/,
  guard: /^(?:guard|sleeve|protection)$/,
  cutLength: JOB_WORDS.cutLength,
} as const;
export type JobField = keyof typeof JOB_HEADINGS;
const NEEDED = ['hose', 'fittingA', 'fittingB', 'overall', 'quantity'] as const satisfies readonly JobField[];

/** One line of a job sheet to be quoted or bought for. */
export interface QuoteLine {
  /** Row of the sheet, as the sheet shows it. */
  readonly row: number;
  readonly hose: string;
  readonly fittingA: string;
  readonly fittingB: string;
  /** In the catalogue's unit of lengths. */
  readonly overall: Decimal;
  readonly quantity: number;
  readonly guard: string;
  /** What the sheet says in its column Cut length, in the catalogue's unit. */
  readonly cutLength: Decimal | undefined;
  /** What stands in the cells, as it came. */
  readonly cells: Readonly<Record<JobField, CellValue>>;
  /** Addresses of the cells that are not blank. */
  readonly places: Readonly<Partial<Record<JobField, string>>>;
}

/** The lines that can be used, and the rows that cannot. */
export interface QuoteLines {
  readonly sheet: string;
  readonly lines: readonly QuoteLine[];
  readonly problems: readonly RowProblem[];
}

type JobTable = SheetTable<JobField>;

/** The job table of a sheet: hose, two fittings, overall length and quantity. */
export function jobTable(content: RangeContent | undefined, near?: number): JobTable | undefined {
  return findTable(content, JOB_HEADINGS, NEEDED, near);
}

function checkUnit({ columns }: JobTable, field: 'overall' | 'cutLength', unit: MeasureUnit): void {
  const stated = columns[field]?.unit && measureUnit('length', columns[field].unit);
  if (!stated || stated.symbol === unit.symbol) return;
  throw new NothingToQuote(
    `The column ${columns[field]!.heading} is in ${stated.symbol}, the catalogue in ${unit.symbol}: they must be the same.`,
  );
}

function lengthOf(table: JobTable, row: number, field: 'overall' | 'cutLength', label: string, unit: MeasureUnit) {
  // Both names only say whether inch marks are allowed: the sheet's unit is the catalogue's already.
  return lengthOfCell(cellOf(table, row, field), label, '', /^(?:in|ft)$/.test(unit.symbol) ? 'in' : 'mm');
}

function placesOf(table: JobTable, row: number): QuoteLine['places'] {
  const fields = (Object.keys(JOB_HEADINGS) as JobField[]).filter(field => cellOf(table, row, field) !== '');
  const { content, columns } = table;
  const place = (field: JobField) =>
    addressOf({ row: content.row + row, column: content.column + columns[field]!.index, rows: 1, columns: 1 });
  return Object.fromEntries(fields.map(field => [field, place(field)]));
}

function cutLengthOf(table: JobTable, row: number, unit: MeasureUnit): Decimal | undefined {
  try {
    return lengthOf(table, row, 'cutLength', 'cut length', unit);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

function readLine(table: JobTable, row: number, unit: MeasureUnit): QuoteLine | undefined {
  const text = (field: JobField) => textOf(table, row, field);
  const overall = lengthOf(table, row, 'overall', 'overall length', unit);
  if (!overall && NEEDED.slice(0, 3).every(field => text(field) === '')) return undefined;
  for (const [field, label] of [
    ['hose', 'hose'],
    ['fittingA', 'fitting A'],
    ['fittingB', 'fitting B'],
  ] as const) {
    if (text(field) === '') throw new TradeError('blank', label, 'is blank', 'fill it in');
  }
  if (!overall) throw new TradeError('blank', 'overall length', 'is blank', 'fill it in');
  const quantity = countOfCell(cellOf(table, row, 'quantity'), 'quantity');
  if (!quantity) throw new TradeError('blank', 'quantity', quantity === 0 ? 'is 0' : 'is blank', 'enter how many');
  return {
    row: sheetRow(table, row),
    hose: text('hose'),
    fittingA: text('fittingA'),
    fittingB: text('fittingB'),
    overall,
    quantity,
    guard: text('guard'),
    cutLength: cutLengthOf(table, row, unit),
    cells: Object.fromEntries(
      (Object.keys(JOB_HEADINGS) as JobField[]).map(field => [field, cellOf(table, row, field)]),
    ) as QuoteLine['cells'],
    places: placesOf(table, row),
  };
}

/**
 * Reads the lines to quote.
 * @param unit the catalogue's unit of lengths
 * @param picked rows of the sheet as it shows them; undefined = every row of the table
 * @throws NothingToQuote where the table's lengths are in another unit
 */
export function readQuoteLines(table: JobTable, unit: MeasureUnit, picked?: ReadonlySet<number>): QuoteLines {
  checkUnit(table, 'overall', unit);
  checkUnit(table, 'cutLength', unit);
  const lines: QuoteLine[] = [];
  const problems: RowProblem[] = [];
  for (const row of dataRows(table)) {
    if (picked && !picked.has(sheetRow(table, row))) continue;
    try {
      const line = readLine(table, row, unit);
      if (line) lines.push(line);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ row: sheetRow(table, row), sentence: error.message });
    }
  }
  return { sheet: table.content.sheet, lines, problems };
}
