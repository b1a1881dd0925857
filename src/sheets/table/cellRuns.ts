import type { CellValue } from '../../workbook/workbook';
import type { SheetCells } from './sheetCells';

/** Columns side by side, from the first to the last. */
export interface Run {
  readonly first: number;
  readonly last: number;
}

/** A cell's text in one line; of an error value none. */
export function oneLine(value: CellValue): string {
  if (value === '' || typeof value === 'object') return '';
  return typeof value === 'number' ? String(value) : String(value).replace(/\s+/g, ' ').trim();
}

/** Runs of cells side by side that hold something, in one row; merged cells count as filled. */
export function runsOf(cells: SheetCells, row: number): Run[] {
  const runs: Run[] = [];
  for (let column = cells.used.column; column <= cells.lastColumn; column += 1) {
    if (cells.isEmpty(row, column) && cells.shown(row, column) === '') continue;
    const run = runs.at(-1);
    if (run && run.last === column - 1) runs[runs.length - 1] = { first: run.first, last: column };
    else runs.push({ first: column, last: column });
  }
  return runs;
}

export const columnsOfRun = ({ first, last }: Run) => Array.from({ length: last - first + 1 }, (_, i) => first + i);

/** The columns of a run in which something stands in a row. */
export function filledIn(cells: SheetCells, row: number, { first, last }: Run): number[] {
  const filled: number[] = [];
  for (let column = first; column <= last; column += 1) if (!cells.isEmpty(row, column)) filled.push(column);
  return filled;
}

/** From the first column of all runs to the last: a row of a table is judged whole, not by the cells between two blanks of it. */
export const widest = (runs: readonly Run[]): Run => ({
  first: Math.min(...runs.map(({ first }) => first)),
  last: Math.max(...runs.map(({ last }) => last)),
});

export const overlaps = (a: Run, b: Run) => a.first <= b.last && b.first <= a.last;
