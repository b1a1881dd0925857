import type { CellValue } from '../../workbook/workbook';
import { columnsOfRun, filledIn, oneLine, type Run } from './cellRuns';
import { headingForms } from './heading';
import { HEADING_WORDS, type HeadingWord } from './headingWords';
import type { SheetCells } from './sheetCells';
import { correctionKey, type HeadingCorrections } from './headingCorrections';
import { areUnits } from './unitsRow';

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

/** Which word a heading is: what somebody said a heading means makes its text a word, too. */
export interface Vocabulary {
  word(text: string): string | undefined;
  isSaid(text: string): boolean;
}

/** The words of all tables, and the headings that somebody explained. */
export function vocabulary(said: HeadingCorrections): Vocabulary {
  const isSaid = (text: string) => said.size > 0 && /\p{L}/u.test(text) && said.has(correctionKey(text));
  return { isSaid, word: text => wordOf(text) ?? (isSaid(text) ? correctionKey(text) : undefined) };
}

const wordsIn = (cells: SheetCells, row: number, run: Run, { word }: Vocabulary) =>
  columnsOfRun(run).map(column => word(oneLine(cells.shown(row, column))));

/** Whether the headings right of a blank column begin a table of their own: they say again what those left of it say. */
function isOwnTable(cells: SheetCells, row: number, before: Run, run: Run, lexicon: Vocabulary): boolean {
  const words = new Set(wordsIn(cells, row, run, lexicon).filter(Boolean));
  return words.size >= 2 && wordsIn(cells, row, before, lexicon).some(word => word && words.has(word));
}

/**
 * Two blank columns part a table only by chance where known headings stand right of them, and what stands below these is in two rows of the
 * table or more, in most of them, and in no others: a block of settings has rows of its own.
 */
function hasRowsOf(cells: SheetCells, row: number, before: Run, run: Run, { word }: Vocabulary): boolean {
  const isText = (column: number) => typeof cells.value(row, column) === 'string';
  const hasWord = (of: Run) => columnsOfRun(of).some(column => word(oneLine(cells.shown(row, column))));
  if (!columnsOfRun(run).every(isText) || !hasWord(run) || !hasWord(before)) return false;
  let [filled, both, blank] = [0, 0, 0];
  for (let at = row + 1; at <= cells.lastRow && blank < 2; at += 1) {
    const isLine = filledIn(cells, at, before).length > 0;
    const isBeside = filledIn(cells, at, run).length > 0;
    if (isBeside && !isLine) return false;
    blank = isLine ? 0 : blank + 1;
    if (isLine) filled += 1;
    if (isBeside) both += 1;
  }
  return both > 1 && both * 2 >= filled;
}

/** Headings that a blank column parts are one table's, unless the second part begins a table of its own kind. */
export function joined(cells: SheetCells, row: number, runs: readonly Run[], lexicon: Vocabulary): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const before = out.at(-1);
    const gap = before ? run.first - before.last - 1 : 0;
    const isNear = before && (gap === 1 || (gap === 2 && hasRowsOf(cells, row, before, run, lexicon)));
    if (isNear && !isOwnTable(cells, row, before, run, lexicon)) {
      out[out.length - 1] = { first: before.first, last: run.last };
    } else out.push(run);
  }
  return out.flatMap(run => parted(cells, row, run, lexicon));
}

/** Tables side by side without a blank column between them: the same headings of a hose list, once for each. */
function parted(cells: SheetCells, row: number, run: Run, lexicon: Vocabulary): Run[] {
  // Most rows of a long sheet are data: their first cell tells.
  if (run.last === run.first || !lexicon.word(oneLine(cells.shown(row, run.first)))) return [run];
  const words = wordsIn(cells, row, run, lexicon);
  const width = words.indexOf(words[0], 1);
  const isTwice = width >= 3 && words.length % width === 0 && words.every((word, at) => word && word === words[at % width]);
  if (!isTwice || !words.includes('hose')) return [run];
  return Array.from({ length: words.length / width }, (_, i) => ({
    first: run.first + i * width,
    last: run.first + (i + 1) * width - 1,
  }));
}

/** Numbers that head readings: 1, 2, 3, 4 or angles. */
export const isReadingNumber = (value: CellValue) =>
  typeof value === 'number' && (value < 10 || value % 45 === 0) && Number.isInteger(value);

/** A row that is mostly numbers, errors and formulas is data, whatever words stand in it. */
function isMostlyData(cells: SheetCells, row: number, run: Run): boolean {
  const filled = columnsOfRun(run).filter(column => cells.shown(row, column) !== '' || cells.isComputed(row, column));
  const isData = (column: number) =>
    (typeof cells.shown(row, column) !== 'string' && !isReadingNumber(cells.shown(row, column))) || cells.isComputed(row, column);
  const data = filled.filter(isData);
  return data.length * 2 > filled.length;
}

/** `Crimp 1 2 3 4`, or the angles `0 45 90 135`, with numbers below. */
function hasNumberedReadings(cells: SheetCells, row: number, run: Run): boolean {
  const columns = columnsOfRun(run);
  const numbered = columns.filter(column => typeof cells.value(row, column) === 'number');
  const others = columns.filter(column => !numbered.includes(column) && oneLine(cells.shown(row, column)) !== '');
  const [first, second] = numbered.map(column => cells.value(row, column) as number);
  if (first === undefined || second === undefined || !others.some(column => wordOf(oneLine(cells.shown(row, column)))))
    return false;
  const step = second - first;
  const isInOrder = numbered.every((column, index) => cells.value(row, column) === first + index * step);
  const isBegin = (first === 1 && step === 1) || (first === 0 && step % 45 === 0 && step > 0);
  return isInOrder && isBegin && numbered.every(column => typeof cells.value(row + 1, column) === 'number');
}

/** Outside of any table: two different words of the vocabulary make a row of headings, or words with numbers below them. */
export function beginsTable(cells: SheetCells, row: number, run: Run, lexicon: Vocabulary): boolean {
  if (run.last === run.first || isMostlyData(cells, row, run)) return false;
  if (new Set(wordsIn(cells, row, run, lexicon).filter(Boolean)).size >= 2) return true;
  const texts = columnsOfRun(run).map(column => oneLine(cells.shown(row, column)));
  if (texts.some(lexicon.isSaid)) return true;
  const isWord = (text: string) => text !== '' && text.length <= 40 && !/^[\d.,'"]/.test(text);
  if (hasNumberedReadings(cells, row, run)) return true;
  return texts.every(isWord) && columnsOfRun(run).some(column => typeof cells.value(row + 1, column) === 'number');
}

/** A formula, or a number that heads no reading: the row is data. (No number is a word of the vocabulary.) */
function hasData(cells: SheetCells, row: number, { first, last }: Run): boolean {
  for (let column = first; column <= last; column += 1) {
    const value = cells.value(row, column);
    if ((typeof value === 'number' && !isReadingNumber(value)) || cells.isComputed(row, column)) return true;
  }
  return false;
}

/**
 * Inside a table: at least half of the filled cells are words of the vocabulary, or two are headings that somebody explained; and no number
 * stands where numbers belong.
 */
export function isSecondHeading(cells: SheetCells, row: number, run: Run, { word, isSaid }: Vocabulary): boolean {
  if (hasData(cells, row, run)) return false;
  const filled = filledIn(cells, row, run);
  if (filled.length < 2) return false;
  const at = (column: number) => oneLine(cells.value(row, column));
  const words = filled.filter(column => word(at(column)));
  const isExplained = new Set(words.map(at).filter(isSaid)).size >= 2;
  const numbers = filled.filter(column => typeof cells.value(row, column) === 'number');
  return (
    (isExplained || words.length * 2 >= filled.length - numbers.length) &&
    new Set(words.map(column => word(at(column)))).size >= 2 &&
    // `m`, `pcs` right below headings say what these are in.
    !areUnits(filled.map(at))
  );
}
