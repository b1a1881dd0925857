import { overlap, type Block } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { CellValue } from '../../workbook/workbook';
import { HEADING_WORDS, type HeadingWord } from './headingWords';
import { headingForms } from './heading';
import type { SheetCells } from './sheetCells';
import { stackedHeadings } from './stackedHeadings';

/** Someone's table. Rows and columns are zero-based numbers of the sheet. */
export interface FoundTable {
  readonly sheet: string;
  /** The heading row on top, then all rows down to the last. */
  readonly block: Block;
  readonly headings: readonly string[];
  /** It is a table in the host's own sense. */
  readonly hostTable: boolean;
  /** Filled rows below the table's end that look like lines of it: they are not among its rows. */
  readonly below: readonly number[];
}

interface Run {
  readonly first: number;
  readonly last: number;
}

const WORDS = Object.entries(HEADING_WORDS) as readonly (readonly [HeadingWord, (typeof HEADING_WORDS)[HeadingWord]])[];
const known = new Map<string, HeadingWord | undefined>();

/** Which word of the vocabulary a cell's text is, of whatever kind of table; undefined where it is none. */
function wordOf(text: string): HeadingWord | undefined {
  if (known.has(text)) return known.get(text);
  if (known.size > 5000) known.clear();
  // A bare number may head a reading, but makes no row of headings: it may as well be a number of the table.
  const forms = /[\p{L}°ø#±]/iu.test(text)
    ? headingForms(text).flatMap(form => [form, form.replace(/ (?:at |of )?(?:end )?[ab]$/, '')])
    : [];
  const found = WORDS.find(([, { exact, ...rest }]) => {
    const loose = 'loose' in rest ? (rest.loose as RegExp) : undefined;
    return forms.some(form => exact.test(form) || loose?.test(form));
  });
  known.set(text, found?.[0]);
  return found?.[0];
}

/** True where a text is a heading of the vocabulary, of whatever kind of table. */
export const knownHeading = (text: string): boolean => wordOf(text) !== undefined;

const textOf = (value: CellValue): string => (typeof value === 'object' ? '' : String(value).replace(/\s+/g, ' ').trim());

/** Runs of cells side by side that hold something, in one row; merged cells count as filled. */
function runsOf(cells: SheetCells, row: number): Run[] {
  const runs: Run[] = [];
  for (let column = cells.used.column; column <= cells.lastColumn; column += 1) {
    if (cells.isEmpty(row, column) && cells.shown(row, column) === '') continue;
    const run = runs.at(-1);
    if (run && run.last === column - 1) runs[runs.length - 1] = { first: run.first, last: column };
    else runs.push({ first: column, last: column });
  }
  return runs;
}

const columnsOf = ({ first, last }: Run) => Array.from({ length: last - first + 1 }, (_, i) => first + i);
const wordsIn = (cells: SheetCells, row: number, run: Run) =>
  columnsOf(run).map(column => wordOf(textOf(cells.shown(row, column))));

/** Headings that a blank column parts are one table's, unless the second part begins a table of its own kind. */
function joined(cells: SheetCells, row: number, runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const before = out.at(-1);
    const words = new Set(wordsIn(cells, row, run).filter(Boolean));
    const isOwn = words.size >= 2 && (!before || wordsIn(cells, row, before).some(word => word && words.has(word)));
    if (before && run.first === before.last + 2 && !isOwn) out[out.length - 1] = { first: before.first, last: run.last };
    else out.push(run);
  }
  return out.flatMap(run => parted(cells, row, run));
}

/** Tables side by side without a blank column between them: the same headings of a hose list, once for each. */
function parted(cells: SheetCells, row: number, run: Run): Run[] {
  const words = wordsIn(cells, row, run);
  const width = words.indexOf(words[0], 1);
  const isTwice = width >= 3 && words.length % width === 0 && words.every((word, at) => word && word === words[at % width]);
  if (!isTwice || !words.includes('hose')) return [run];
  return Array.from({ length: words.length / width }, (_, i) => ({
    first: run.first + i * width,
    last: run.first + (i + 1) * width - 1,
  }));
}

/** Numbers that head readings: 1, 2, 3, 4 or angles. */
const isReadingNumber = (value: CellValue) =>
  typeof value === 'number' && (value < 10 || value % 45 === 0) && Number.isInteger(value);

const filledIn = (cells: SheetCells, row: number, run: Run) => columnsOf(run).filter(column => !cells.isEmpty(row, column));

/** A row that is mostly numbers, errors and formulas is data, whatever words stand in it. */
function isMostlyData(cells: SheetCells, row: number, run: Run): boolean {
  const filled = columnsOf(run).filter(column => cells.shown(row, column) !== '' || cells.formula(row, column) !== '');
  const isData = (column: number) =>
    (typeof cells.shown(row, column) !== 'string' && !isReadingNumber(cells.shown(row, column))) ||
    cells.formula(row, column) !== '';
  const data = filled.filter(isData);
  return data.length * 2 > filled.length;
}

/** `Crimp 1 2 3 4`, or the angles `0 45 90 135`, with numbers below. */
function hasNumberedReadings(cells: SheetCells, row: number, run: Run): boolean {
  const columns = columnsOf(run);
  const numbered = columns.filter(column => typeof cells.value(row, column) === 'number');
  const others = columns.filter(column => !numbered.includes(column) && textOf(cells.shown(row, column)) !== '');
  const [first, second] = numbered.map(column => cells.value(row, column) as number);
  if (first === undefined || second === undefined || !others.some(column => wordOf(textOf(cells.shown(row, column)))))
    return false;
  const step = second - first;
  const isInOrder = numbered.every((column, index) => cells.value(row, column) === first + index * step);
  const isBegin = (first === 1 && step === 1) || (first === 0 && step % 45 === 0 && step > 0);
  return isInOrder && isBegin && numbered.every(column => typeof cells.value(row + 1, column) === 'number');
}

/** Outside of any table: two different words of the vocabulary make a row of headings, or words with numbers below them. */
function beginsTable(cells: SheetCells, row: number, run: Run): boolean {
  if (run.last === run.first || isMostlyData(cells, row, run)) return false;
  if (new Set(wordsIn(cells, row, run).filter(Boolean)).size >= 2) return true;
  const texts = columnsOf(run).map(column => textOf(cells.shown(row, column)));
  const isWord = (text: string) => text !== '' && text.length <= 40 && !/^[\d.,'"]/.test(text);
  if (hasNumberedReadings(cells, row, run)) return true;
  return texts.every(isWord) && columnsOf(run).some(column => typeof cells.value(row + 1, column) === 'number');
}

/** Inside a table: at least half of the filled cells are words of the vocabulary, and no number stands where numbers belong. */
function isSecondHeading(cells: SheetCells, row: number, run: Run): boolean {
  const filled = filledIn(cells, row, run);
  if (filled.length < 2) return false;
  const words = filled.filter(column => wordOf(textOf(cells.value(row, column))));
  const others = filled.filter(column => !words.includes(column)).map(column => cells.value(row, column));
  const numbers = others.filter(value => typeof value === 'number');
  return (
    words.length * 2 >= filled.length - numbers.length &&
    new Set(words.map(column => wordOf(textOf(cells.value(row, column))))).size >= 2 &&
    numbers.every(isReadingNumber) &&
    filled.every(column => cells.formula(row, column) === '')
  );
}

/** From the first column of all runs to the last: a row of a table is judged whole, not by the cells between two blanks of it. */
const widest = (runs: readonly Run[]): Run => ({
  first: Math.min(...runs.map(({ first }) => first)),
  last: Math.max(...runs.map(({ last }) => last)),
});

const overlaps = (a: Run, b: Run) => a.first <= b.last && b.first <= a.last;

interface OpenTable {
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

/** What is stated once for a table of crimps; the first three make it sure that it is one. */
const SETTINGS: readonly HeadingWord[] = ['target', 'tolerance', 'largestSpread', 'uncertainty', 'step', 'perTurn'];
const SURE = 3;

/** Whether a row says `Target (mm) 24.9`, in whatever columns. */
const isSettings = (cells: SheetCells, row: number, run: Run, words: readonly HeadingWord[]) =>
  columnsOf(run).some(column => {
    const text = cells.value(row, column);
    if (typeof text !== 'string' || !/\d/.test(textOf(cells.value(row, column + 1)))) return false;
    return headingForms(text).some(form => words.some(word => HEADING_WORDS[word].exact.test(form)));
  });

/** Settings right above the next headings hold for these: they are no rows of the table before. */
function leaveSettings(cells: SheetCells, heading: number, table: OpenTable): void {
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

function takeRow(cells: SheetCells, row: number, open: OpenTable): void {
  const filled = filledIn(cells, row, open.run).length;
  if (filled === 0) return;
  // Two wholly blank rows end a table.
  if (row - open.bottom > 2) open.isClosed = true;
  if (!open.isClosed) open.bottom = row;
  else if (filled >= LEAST_FILLED) open.below.push(row);
}

/** The headings of tables that begin in the row above may go on in this one: then both rows head one table. */
function stacked(cells: SheetCells, row: number, open: readonly OpenTable[], runs: readonly Run[]): OpenTable | undefined {
  const above = open.filter(({ top, bottom, headings }) => top === row - 1 && bottom === top && !headings);
  if (above.length === 0 || runs.length === 0) return undefined;
  const over = widest(above.map(({ run }) => run));
  const run = widest([over, ...runs.filter(each => overlaps(each, over))]);
  const headings = stackedHeadings(cells, row, columnsOf(run), text => wordOf(text) !== undefined);
  return headings && { top: row, run, headings, bottom: row, isClosed: false, below: [] };
}

/** Numbers right of the headings, in columns that have none, belong to the table: `Measured` over four readings. */
function withUnheaded(cells: SheetCells, { top, bottom, run }: OpenTable, others: readonly OpenTable[]): Run {
  const rows = Array.from({ length: bottom - top }, (_, i) => top + 1 + i).filter(row => filledIn(cells, row, run).length > 0);
  const isOther = (column: number) =>
    others.some(
      each => each.run !== run && each.top <= bottom && each.bottom >= top && overlaps(each.run, { first: column, last: column }),
    );
  const isNumber = (row: number, column: number) =>
    typeof cells.value(row, column) === 'number' || /^\s*\d/.test(textOf(cells.value(row, column)));
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
function openOwn(hostTable: HostBlock): OpenTable {
  const { row, column, columns } = hostTable;
  const whole = wholeTable(hostTable);
  const run = { first: column, last: column + columns - 1 };
  return { top: row, run, bottom: whole.row + whole.rows - 1, isClosed: true, below: [], own: hostTable };
}

function ownTable(cells: SheetCells, { row, column, rows, columns }: HostBlock, below: readonly number[]): FoundTable {
  const headings = columnsOf({ first: column, last: column + columns - 1 }).map(at => textOf(cells.value(row, at)));
  return { sheet: cells.sheet, block: { row, column, rows, columns }, headings, hostTable: true, below };
}

/**
 * All tables of a sheet, in order of their heading rows. A title block above is no part of one. A table ends at two wholly blank rows or
 * at another row of headings, which begins a table with its own columns; a host's own table has its own range.
 */
export function findTables(cells: SheetCells, hostTables: readonly HostBlock[] = []): readonly FoundTable[] {
  const own = hostTables.map(openOwn);
  const taken = hostTables.map(wholeTable);
  const isTaken = (row: number, run: Run) =>
    taken.some(block => overlap(block, { row, column: run.first, rows: 1, columns: run.last - run.first + 1 }));
  const found: OpenTable[] = [];
  let open: OpenTable[] = [...own];
  for (let row = cells.used.row; row <= cells.lastRow; row += 1) {
    const runs = joined(cells, row, runsOf(cells, row)).filter(run => !isTaken(row, run));
    const both = stacked(cells, row, open, runs);
    if (both) {
      open = [...open.filter(({ run }) => !overlaps(run, both.run)), both];
      found.push(both);
      continue;
    }
    for (const run of runs) {
      const over = open.filter(table => table.top < row && overlaps(table.run, run));
      const begins = over.some(table => !table.isClosed && row - table.bottom <= 2)
        ? isSecondHeading(cells, row, widest([run, ...over.map(table => table.run)]))
        : beginsTable(cells, row, run) && (over.length === 0 || isSecondHeading(cells, row, run));
      if (!begins) continue;
      for (const table of over) if (!table.own) leaveSettings(cells, row, table);
      open = open.filter(table => !over.includes(table));
      const table: OpenTable = { top: row, run, bottom: row, isClosed: false, below: [] };
      open.push(table);
      found.push(table);
    }
    for (const table of open) if (table.top < row && !(table.own && row <= table.bottom)) takeRow(cells, row, table);
  }
  const full = found.filter(({ top, bottom }) => bottom > top);
  const tables = full.map((table): FoundTable => {
    const { top, bottom, below, headings: both } = table;
    const run = withUnheaded(cells, table, full);
    const headings = columnsOf(run).map((column, at) => both?.[at] ?? textOf(cells.shown(top, column)));
    const block = { row: top, column: run.first, rows: bottom - top + 1, columns: run.last - run.first + 1 };
    return { sheet: cells.sheet, block, headings, hostTable: false, below };
  });
  const ownFound = own.map(({ own: place, below }) => ownTable(cells, place!, below));
  return [...ownFound, ...tables].sort((a, b) => a.block.row - b.block.row || a.block.column - b.block.column);
}

/** Rows by which a selected cell may lie below a table and still mean it. */
const NEAR = 2;

/**
 * The table that a selection means: the one it lies in, else the one just above it, else the next one below; of a sheet with one table
 * only, that one.
 */
export function tableAt(tables: readonly FoundTable[], selected: Block): FoundTable | undefined {
  const own = tables.find(({ block }) => overlap(block, selected));
  if (own) return own;
  const beside = (block: Block) => selected.column >= block.column && selected.column < block.column + block.columns;
  const above = tables.filter(({ block }) => {
    const gap = selected.row - (block.row + block.rows - 1);
    return gap > 0 && gap <= NEAR && beside(block);
  });
  if (above.length > 0) return above.at(-1);
  return tables.find(({ block }) => block.row > selected.row) ?? (tables.length === 1 ? tables[0] : undefined);
}
