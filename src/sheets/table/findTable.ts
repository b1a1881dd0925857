import { overlap, type Block } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { roleOfHeading } from './roles';

/** Someone's table: its block with the heading row on top. */
export interface FoundTable {
  readonly sheet: string;
  readonly block: Block;
  readonly headings: readonly string[];
  /** It is a table in the host's own sense. */
  readonly hostTable: boolean;
}

const textOf = (value: CellValue | undefined): string =>
  value === undefined || typeof value === 'object' ? '' : String(value).trim();

/** Value of a cell of the sheet by zero-based numbers; blank outside the used part. */
export function cellOf(used: RangeContent, row: number, column: number): CellValue {
  return used.values[row - used.row]?.[column - used.column] ?? '';
}

const formulaOf = (used: RangeContent, row: number, column: number): string =>
  used.formulas[row - used.row]?.[column - used.column] ?? '';

/** Whether nothing at all stands in a cell, not even a formula that shows nothing. */
export function isEmpty(used: RangeContent, row: number, column: number): boolean {
  return cellOf(used, row, column) === '' && formulaOf(used, row, column) === '';
}

const lastRow = (used: RangeContent) => used.row + used.values.length - 1;

interface Run {
  readonly first: number;
  readonly last: number;
}

/** Runs of cells side by side that hold something, in one row. */
function runsOf(used: RangeContent, row: number): Run[] {
  const runs: Run[] = [];
  const width = used.values[0]?.length ?? 0;
  for (let column = used.column; column < used.column + width; column += 1) {
    if (isEmpty(used, row, column)) continue;
    const run = runs.at(-1);
    if (run && run.last === column - 1) runs[runs.length - 1] = { first: run.first, last: column };
    else runs.push({ first: column, last: column });
  }
  return runs;
}

const textsOf = (used: RangeContent, row: number, { first, last }: Run): string[] =>
  Array.from({ length: last - first + 1 }, (_, i) => textOf(cellOf(used, row, first + i)));

/** What a heading is to the one who looks for a table; undefined where it is nothing. */
export type HeadingReader = (heading: string) => string | undefined;

function looksLikeHeadings(used: RangeContent, row: number, run: Run, roleOf: HeadingReader): boolean {
  const texts = textsOf(used, row, run);
  if (texts.length < 2) return false;
  // Readings may be headed 1, 2, 3, 4; a row that is mostly numbers, errors and formulas is data, whatever words stand in it.
  const isData = (column: number) => typeof cellOf(used, row, column) !== 'string' || formulaOf(used, row, column) !== '';
  if (texts.filter((_, i) => isData(run.first + i)).length * 2 > texts.length) return false;
  const roles = new Set(texts.map(roleOf).filter(Boolean));
  if (roles.size >= 2) return true;
  const words = texts.every(text => text !== '' && text.length <= 40 && !/^[\d.,'"]/.test(text));
  const numbersBelow = texts.some((_, i) => typeof cellOf(used, row + 1, run.first + i) === 'number');
  return words && numbersBelow;
}

function headingRun(used: RangeContent, row: number, column: number, roleOf: HeadingReader): Run | undefined {
  const runs = runsOf(used, row).filter(run => looksLikeHeadings(used, row, run, roleOf));
  return runs.find(run => column >= run.first && column <= run.last);
}

function bottomOf(used: RangeContent, top: number, { first, last }: Run, roleOf: HeadingReader): number {
  const filled = (row: number) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(column => !isEmpty(used, row, column)).length;
  let bottom = top;
  for (let row = top + 1; row <= lastRow(used); row += 1) {
    const count = filled(row);
    if (count === 0) {
      if (filled(row + 1) === 0) break;
      continue;
    }
    const afterGap = bottom < row - 1;
    if (afterGap && count === 1 && last > first + 1) break;
    if (runsOf(used, row).some(run => overlaps(run, { first, last }) && looksLikeHeadings(used, row, run, roleOf))) break;
    bottom = row;
  }
  return bottom;
}

const overlaps = (a: Run, b: Run) => a.first <= b.last && b.first <= a.last;

/**
 * Finds the table around a selected block: a title block may stand above it, other tables beside or below it, single blank
 * rows in it. Two blank rows, a line of its own after a blank row, or another row of headings end it.
 * @param roleOf what headings are known: two of different roles make a row of headings
 * @returns the table, or undefined where no row of headings is found
 */
export function findTable(
  used: RangeContent,
  selected: Block,
  hostTables: readonly HostBlock[] = [],
  roleOf: HeadingReader = roleOfHeading,
): FoundTable | undefined {
  const own = hostTables.find(table => overlap(wholeTable(table), selected));
  if (own) return tableOf(used, { row: own.row, column: own.column, rows: own.rows, columns: own.columns }, true);
  const rows = Array.from(
    { length: Math.max(0, Math.min(selected.row, lastRow(used)) - used.row + 1) },
    (_, i) => selected.row - i,
  );
  const below = Array.from({ length: Math.max(0, lastRow(used) - selected.row) }, (_, i) => selected.row + 1 + i);
  for (const row of [...rows, ...below]) {
    const isAbove = row <= selected.row;
    const run =
      headingRun(used, row, selected.column, roleOf) ??
      (isAbove ? undefined : runsOf(used, row).find(each => looksLikeHeadings(used, row, each, roleOf)));
    if (!run) continue;
    const bottom = bottomOf(used, row, run, roleOf);
    if (isAbove && bottom < selected.row - 2) continue;
    if (bottom === row) continue;
    return tableOf(used, { row, column: run.first, rows: bottom - row + 1, columns: run.last - run.first + 1 }, false);
  }
  return undefined;
}

function tableOf(used: RangeContent, block: Block, hostTable: boolean): FoundTable {
  const headings = textsOf(used, block.row, { first: block.column, last: block.column + block.columns - 1 });
  return { sheet: used.sheet, block, headings, hostTable };
}
