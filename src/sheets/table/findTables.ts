import { overlap, type Block } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { CellValue } from '../../workbook/workbook';
import { HEADING_WORDS, type HeadingWord } from './headingWords';
import { headingForms } from './heading';
import type { SheetCells } from './sheetCells';
import { correctionKey, type HeadingCorrections } from './tableColumns';

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

/** Whether a text is a word of the vocabulary, of whatever kind of table. */
export const isHeadingWord = (text: string): boolean => wordOf(text) !== undefined;

/** Which word a heading is: what somebody said a heading means makes its text a word, too. */
interface Vocabulary {
  word(text: string): string | undefined;
  isSaid(text: string): boolean;
}

function vocabulary(said: HeadingCorrections): Vocabulary {
  const isSaid = (text: string) => said.size > 0 && /\p{L}/u.test(text) && said.has(correctionKey(text));
  return { isSaid, word: text => wordOf(text) ?? (isSaid(text) ? correctionKey(text) : undefined) };
}

const textOf = (value: CellValue): string => (typeof value === 'object' ? '' : String(value).trim());

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
const wordsIn = (cells: SheetCells, row: number, run: Run, { word }: Vocabulary) =>
  columnsOf(run).map(column => word(textOf(cells.shown(row, column))));

/** Headings that a blank column parts are one table's, unless the second part begins a table of its own kind. */
function joined(cells: SheetCells, row: number, runs: readonly Run[], lexicon: Vocabulary): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const before = out.at(-1);
    const words = new Set(wordsIn(cells, row, run, lexicon).filter(Boolean));
    const isOwn = words.size >= 2 && (!before || wordsIn(cells, row, before, lexicon).some(word => word && words.has(word)));
    if (before && run.first === before.last + 2 && !isOwn) out[out.length - 1] = { first: before.first, last: run.last };
    else out.push(run);
  }
  return out;
}

/** Numbers that head readings: 1, 2, 3, 4 or angles. */
export const isReadingNumber = (value: CellValue) =>
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

/** Outside of any table: two different words of the vocabulary make a row of headings, or words with numbers below them. */
function beginsTable(cells: SheetCells, row: number, run: Run, lexicon: Vocabulary): boolean {
  if (run.last === run.first || isMostlyData(cells, row, run)) return false;
  if (new Set(wordsIn(cells, row, run, lexicon).filter(Boolean)).size >= 2) return true;
  const texts = columnsOf(run).map(column => textOf(cells.shown(row, column)));
  if (texts.some(lexicon.isSaid)) return true;
  const isWord = (text: string) => text !== '' && text.length <= 40 && !/^[\d.,'"]/.test(text);
  return texts.every(isWord) && columnsOf(run).some(column => typeof cells.value(row + 1, column) === 'number');
}

/**
 * Inside a table: at least half of the filled cells are words of the vocabulary, or two are headings that somebody explained; and no number
 * stands where numbers belong.
 */
function isSecondHeading(cells: SheetCells, row: number, run: Run, { word, isSaid }: Vocabulary): boolean {
  const filled = filledIn(cells, row, run);
  if (filled.length < 2) return false;
  const at = (column: number) => textOf(cells.value(row, column));
  const words = filled.filter(column => word(at(column)));
  const isExplained = new Set(words.map(at).filter(isSaid)).size >= 2;
  const others = filled.filter(column => !words.includes(column)).map(column => cells.value(row, column));
  const numbers = others.filter(value => typeof value === 'number');
  return (
    (isExplained || words.length * 2 >= filled.length - numbers.length) &&
    new Set(words.map(column => word(at(column)))).size >= 2 &&
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
  bottom: number;
  /** Ended: what comes below is told of, but is not read. */
  isClosed: boolean;
  readonly below: number[];
}

/** Rows that hold less than this say nothing that could be a line. */
const LEAST_FILLED = 2;

function takeRow(cells: SheetCells, row: number, open: OpenTable): void {
  const filled = filledIn(cells, row, open.run).length;
  if (filled === 0) return;
  // Two wholly blank rows end a table.
  if (row - open.bottom > 2) open.isClosed = true;
  if (!open.isClosed) open.bottom = row;
  else if (filled >= LEAST_FILLED) open.below.push(row);
}

function ownTables(cells: SheetCells, hostTables: readonly HostBlock[]): FoundTable[] {
  return hostTables.map(({ row, column, rows, columns }) => {
    const headings = columnsOf({ first: column, last: column + columns - 1 }).map(at => textOf(cells.value(row, at)));
    return { sheet: cells.sheet, block: { row, column, rows, columns }, headings, hostTable: true, below: [] };
  });
}

/**
 * All tables of a sheet, in order of their heading rows. A title block above is no part of one. A table ends at two wholly blank rows or
 * at another row of headings, which begins a table with its own columns; a host's own table has its own range.
 * @param said what headings somebody explained by hand: they are known like the words of the vocabulary
 */
export function findTables(
  cells: SheetCells,
  hostTables: readonly HostBlock[] = [],
  said: HeadingCorrections = new Map(),
): readonly FoundTable[] {
  const lexicon = vocabulary(said);
  const own = ownTables(cells, hostTables);
  const taken = hostTables.map(wholeTable);
  const isTaken = (row: number, run: Run) =>
    taken.some(block => overlap(block, { row, column: run.first, rows: 1, columns: run.last - run.first + 1 }));
  const found: OpenTable[] = [];
  let open: OpenTable[] = [];
  for (let row = cells.used.row; row <= cells.lastRow; row += 1) {
    for (const run of joined(cells, row, runsOf(cells, row), lexicon)) {
      if (isTaken(row, run)) continue;
      const over = open.filter(table => overlaps(table.run, run));
      const begins = over.some(table => !table.isClosed && row - table.bottom <= 2)
        ? isSecondHeading(cells, row, widest([run, ...over.map(table => table.run)]), lexicon)
        : beginsTable(cells, row, run, lexicon) && (over.length === 0 || isSecondHeading(cells, row, run, lexicon));
      if (!begins) continue;
      open = open.filter(table => !over.includes(table));
      const table: OpenTable = { top: row, run, bottom: row, isClosed: false, below: [] };
      open.push(table);
      found.push(table);
    }
    for (const table of open) if (table.top < row) takeRow(cells, row, table);
  }
  const tables = found
    .filter(({ top, bottom }) => bottom > top)
    .map(({ top, run, bottom, below }): FoundTable => {
      const headings = columnsOf(run).map(column => textOf(cells.shown(top, column)));
      const block = { row: top, column: run.first, rows: bottom - top + 1, columns: run.last - run.first + 1 };
      return { sheet: cells.sheet, block, headings, hostTable: false, below };
    });
  return [...own, ...tables].sort((a, b) => a.block.row - b.block.row || a.block.column - b.block.column);
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
