import { anyMeasureUnit } from '../../core/units/measureUnit';
import { splitHeading } from '../../core/units/headingUnit';
import { textOf } from './cellRuns';
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
  const isFilled = (at: number, column: number) => textOf(cells.value(at, column)) !== '';
  const lower = columns.filter(column => !cells.isEmpty(row, column));
  const fillsBlanks = lower.some(column => !isFilled(row - 1, column));
  const leavesBlank = columns.some(column => isFilled(row - 1, column) && cells.isEmpty(row, column));
  if (!fillsBlanks || !leavesBlank || !lower.every(column => isHeadingCell(cells, row, column))) return undefined;
  const texts = lower.map(column => textOf(cells.value(row, column)));
  if (texts.every(text => anyMeasureUnit(text.replace(/^[([](.*)[)\]]$/, '$1')))) return undefined;
  let group = '';
  const headings = columns.map(column => {
    const own = textOf(cells.shown(row - 1, column));
    const under = textOf(cells.value(row, column));
    if (own !== '') group = own;
    return combined(own === '' && under !== '' ? group : own, under, isWord);
  });
  const isKnown = (column: number) => isWord(headings[columns.indexOf(column)]!);
  return lower.filter(isKnown).length * 2 >= lower.length ? headings : undefined;
}
