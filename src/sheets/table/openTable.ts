import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import { columnsOfRun, filledIn, overlaps, oneLine, widest, type Run } from './cellRuns';
import { headingForms } from './heading';
import type { Vocabulary } from './headingRow';
import { HEADING_WORDS, type HeadingWord } from './headingWords';
import type { SheetCells } from './sheetCells';
import { stackedHeadings } from './stackedHeadings';

/** A table while its rows are gone through. */
export interface OpenTable {
  readonly top: number;
  readonly run: Run;
  /** Where they stand in two rows. */
  readonly headings?: readonly string[];
  bottom: number;
  /** Ended: what comes below is told of, but is not read. */
  isClosed: boolean;
  readonly below: number[];
  /** Its place, where it is a table of the host's own. */
  readonly own?: HostBlock;
}

/** Rows that hold less than this say nothing that could be a line. */
const LEAST_FILLED = 2;

/** What is stated once for a table of crimps; the first four make it sure that it is one. */
const SETTINGS: readonly HeadingWord[] = [
  'target',
  'tolerance',
  'toleranceWidth',
  'largestSpread',
  'uncertainty',
  'step',
  'perTurn',
];
const SURE = 4;

/** Whether a row says `Target (mm) 24.9`, in whatever columns. */
const isSettings = (cells: SheetCells, row: number, run: Run, words: readonly HeadingWord[]) =>
  columnsOfRun(run).some(column => {
    const text = cells.value(row, column);
    if (typeof text !== 'string' || !/\d/.test(oneLine(cells.value(row, column + 1)))) return false;
    return headingForms(text).some(form => words.some(word => HEADING_WORDS[word].exact.test(form)));
  });

/** Settings right above the next headings hold for these: they are no rows of the table before. */
export function leaveSettings(cells: SheetCells, heading: number, table: OpenTable): void {
  const isBlank = (row: number) => filledIn(cells, row, table.run).length === 0;
  const last = isBlank(heading - 1) ? heading - 2 : heading - 1;
  let first = last + 1;
  while (first - 1 > table.top && isSettings(cells, first - 1, table.run, SETTINGS)) first -= 1;
  const rows = Array.from({ length: last + 1 - first }, (_, i) => first + i);
  if (!rows.some(row => isSettings(cells, row, table.run, SETTINGS.slice(0, SURE)))) return;
  while (table.below.length > 0 && table.below.at(-1)! >= first) table.below.pop();
  if (table.bottom < first) return;
  table.bottom = first - 1;
  while (table.bottom > table.top && isBlank(table.bottom)) table.bottom -= 1;
}

/** Takes a row into a table, or tells that it lies below its end. */
export function takeRow(cells: SheetCells, row: number, open: OpenTable): void {
  const filled = filledIn(cells, row, open.run).length;
  if (filled === 0) return;
  // Two wholly blank rows end a table.
  if (row - open.bottom > 2) open.isClosed = true;
  if (!open.isClosed) open.bottom = row;
  else if (filled >= LEAST_FILLED) open.below.push(row);
}

/** The headings of tables that begin in the row above may go on in this one: then both rows head one table. */
export function stacked(
  cells: SheetCells,
  row: number,
  open: readonly OpenTable[],
  runs: readonly Run[],
  { word }: Vocabulary,
): OpenTable | undefined {
  const above = open.filter(({ top, bottom, headings }) => top === row - 1 && bottom === top && !headings);
  if (above.length === 0 || runs.length === 0) return undefined;
  const over = widest(above.map(({ run }) => run));
  const run = widest([over, ...runs.filter(each => overlaps(each, over))]);
  const headings = stackedHeadings(cells, row, columnsOfRun(run), text => word(text) !== undefined);
  return headings && { top: row, run, headings, bottom: row, isClosed: false, below: [] };
}

/** Numbers right of the headings, in columns that have none, belong to the table: `Measured` over four readings. */
export function withUnheaded(cells: SheetCells, { top, bottom, run }: OpenTable, others: readonly OpenTable[]): Run {
  const rows = Array.from({ length: bottom - top }, (_, i) => top + 1 + i).filter(row => filledIn(cells, row, run).length > 0);
  const isOther = (column: number) =>
    others.some(
      each => each.run !== run && each.top <= bottom && each.bottom >= top && overlaps(each.run, { first: column, last: column }),
    );
  const isNumber = (row: number, column: number) =>
    typeof cells.value(row, column) === 'number' || /^\s*\d/.test(oneLine(cells.value(row, column)));
  const belongs = (column: number) =>
    column <= cells.lastColumn &&
    cells.shown(top, column) === '' &&
    !isOther(column) &&
    rows.filter(row => isNumber(row, column)).length * 2 >= rows.length;
  let { last } = run;
  while (belongs(last + 1)) last += 1;
  return { ...run, last };
}

/** A host's own table: it ends where the host says, and what stands below that is told of. */
export function openOwn(hostTable: HostBlock): OpenTable {
  const { row, column, columns } = hostTable;
  const whole = wholeTable(hostTable);
  const run = { first: column, last: column + columns - 1 };
  return { top: row, run, bottom: whole.row + whole.rows - 1, isClosed: true, below: [], own: hostTable };
}
