import { anyMeasureUnit } from '../../core/units/measureUnit';
import { splitHeading } from '../../core/units/headingUnit';
import { oneLine } from './cellRuns';
import { isReadingNumber } from './headingRow';
import type { SheetCells } from './sheetCells';

const LONGEST = 40;

/** `Coupling` over `A`: the words of both in the order that says something, and the unit at the end. */
function combined(upper: string, lower: string, isWord: (text: string) => boolean): string {
  if (upper === '' || upper === lower) return lower;
  if (lower === '') return upper;
  const [over, under] = [splitHeading(upper), splitHeading(lower)];
  const unit = under.bracket ?? over.bracket;
  const behind = (words: string) => (unit === undefined ? words : `${words} (${unit})`);
  const both = [`${under.name} ${over.name}`, `${over.name} ${under.name}`];
  const known = both.find(isWord) ?? (isWord(under.name) ? under.name : undefined);
  return behind(known ?? both[1]!);
}

/**
 * Every heading over two lines: `Finished` over `length (in)`, `Hose` over `stock`. Words below that say nothing in the vocabulary, alone or
 * with those above, leave the upper ones as they are.
 */
function wholeHeadings(
  cells: SheetCells,
  row: number,
  columns: readonly number[],
  isWord: (text: string) => boolean,
): readonly string[] | undefined {
  const texts = columns.map(column => [oneLine(cells.shown(row - 1, column)), oneLine(cells.value(row, column))] as const);
  const [over, under] = [0, 1].map(at => texts.map(each => splitHeading(each[at as 0 | 1]).name)) as [string[], string[]];
  const isBoth = (at: number) =>
    over[at] !== '' && under[at] !== '' && [`${under[at]} ${over[at]}`, `${over[at]} ${under[at]}`].some(isWord);
  const lower = columns.flatMap((_, at) => (texts[at]![1] === '' ? [] : [at]));
  // What stands below in figures, or ends in them, is a line of the table and no heading.
  const isPlain = lower.every(at => isHeadingCell(cells, row, columns[at]!) && /^[^\d]+$/.test(texts[at]![1]));
  const hasNumbers = lower.some(at => /^[^\p{L}]*\d/u.test(oneLine(cells.value(row + 1, columns[at]!))));
  const both = lower.filter(isBoth).length;
  if (!isPlain || !hasNumbers || both < 2 || both * 2 < lower.length) return undefined;
  return texts.map(([upper, below], at) =>
    isBoth(at) || !isWord(over[at]!) ? combined(upper, below, isWord) : withUnit(upper, below),
  );
}

/** The upper words alone, with the unit of either. */
function withUnit(upper: string, lower: string): string {
  const [over, under] = [splitHeading(upper), splitHeading(lower)];
  const unit = under.bracket ?? over.bracket;
  return unit === undefined ? over.name : `${over.name} (${unit})`;
}

/** A cell of a second row of headings: a short text, or the number of a reading. */
function isHeadingCell(cells: SheetCells, row: number, column: number): boolean {
  const value = cells.value(row, column);
  if (cells.isComputed(row, column)) return false;
  return isReadingNumber(value) || (typeof value === 'string' && value.length <= LONGEST);
}

/**
 * Headings that stand in two rows: groups above (`Coupling`, `Length`), and below them what parts each group (`A`, `B`). The lower row
 * fills what the upper one leaves blank, and leaves blank what the upper one says alone.
 * @param columns from the first to the last of both rows
 * @returns one heading a column; undefined where the lower row is no row of headings
 */
export function stackedHeadings(
  cells: SheetCells,
  row: number,
  columns: readonly number[],
  isWord: (text: string) => boolean,
): readonly string[] | undefined {
  const isFilled = (at: number, column: number) => oneLine(cells.value(at, column)) !== '';
  const lower = columns.filter(column => !cells.isEmpty(row, column));
  const fillsBlanks = lower.some(column => !isFilled(row - 1, column));
  const leavesBlank = columns.some(column => isFilled(row - 1, column) && cells.isEmpty(row, column));
  if (!fillsBlanks || !leavesBlank) return wholeHeadings(cells, row, columns, isWord);
  if (!lower.every(column => isHeadingCell(cells, row, column))) return undefined;
  const texts = lower.map(column => oneLine(cells.value(row, column)));
  if (texts.every(text => anyMeasureUnit(text.replace(/^[([](.*)[)\]]$/, '$1')))) return undefined;
  let group = '';
  const headings = columns.map(column => {
    const own = oneLine(cells.shown(row - 1, column));
    const under = oneLine(cells.value(row, column));
    if (own !== '') group = own;
    return combined(own === '' && under !== '' ? group : own, under, isWord);
  });
  const isKnown = (column: number) => isWord(headings[columns.indexOf(column)]!);
  return lower.filter(isKnown).length * 2 >= lower.length ? headings : undefined;
}
