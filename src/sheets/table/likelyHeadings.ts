import { nameOfCell } from '../../cells/sheetCell';
import { overlap } from '../../workbook/a1';
import { wholeTable, type HostBlock } from '../../workbook/hostTable';
import type { CellValue } from '../../workbook/workbook';
import type { FoundTable } from './findTables';
import { isReadingNumber } from './headingRow';
import type { SheetCells } from './sheetCells';

/** Rows below a heading that are looked at. */
const LOOKED_AT = 8;
const MOST_PROPOSED = 4;

const NUMBER_WITH_UNIT = /^[-+−±~]?\d[\d.,/'\s-]*(?:\p{L}{1,3}|["″”'′])?\.?$/u;

/** A number, a date, a measure: what stands below headings, seldom in them. */
const isValue = (cell: CellValue) =>
  typeof cell === 'number' || typeof cell === 'boolean' || (typeof cell === 'string' && NUMBER_WITH_UNIT.test(cell.trim()));

const isWords = (cell: CellValue): cell is string => typeof cell === 'string' && /\p{L}/u.test(cell) && !isValue(cell);

/** Columns that a row fills, in groups that two blank columns or more part. */
function groupsOf(cells: SheetCells, row: number): number[][] {
  const groups: number[][] = [];
  for (let column = cells.used.column; column <= cells.lastColumn; column += 1) {
    if (cells.isEmpty(row, column)) continue;
    const before = groups.at(-1);
    if (before && column - before.at(-1)! <= 2) before.push(column);
    else groups.push([column]);
  }
  return groups;
}

/** The last row that goes on below a row without two blank ones between. */
function bottomOf(cells: SheetCells, top: number, columns: readonly number[]): number {
  let bottom = top;
  for (let row = top + 1; row <= cells.lastRow && row - bottom <= 2; row += 1) {
    if (columns.some(column => !cells.isEmpty(row, column))) bottom = row;
  }
  return bottom;
}

/** How much a cell speaks for a heading: words over values do, words that come again below them do not. */
function likeness(cells: SheetCells, top: number, column: number, bottom: number): number {
  const heading = cells.value(top, column);
  const rows = Array.from({ length: Math.min(bottom - top, LOOKED_AT) }, (_, i) => top + 1 + i);
  const below = rows.map(row => cells.value(row, column)).filter(cell => cell !== '');
  if (!isWords(heading)) return isReadingNumber(heading) && below.some(isValue) ? 0 : -2;
  if (below.includes(heading)) return -2;
  return below.some(isValue) ? 2 : below.length > 0 ? 1 : 0;
}

/**
 * The rows of a sheet that look most like headings, the likeliest first: mostly words, over rows with values. Each comes as the table that it
 * would head. For sheets whose headings nobody knows: somebody chooses the row and says what its headings mean.
 */
export function likelyHeadings(cells: SheetCells, hostTables: readonly HostBlock[] = []): readonly FoundTable[] {
  const found: { table: FoundTable; score: number }[] = [];
  for (let row = cells.used.row; row < cells.lastRow; row += 1) {
    for (const columns of groupsOf(cells, row)) {
      const words = columns.filter(column => isWords(cells.value(row, column)));
      const values = columns.filter(column => !words.includes(column) && !isReadingNumber(cells.value(row, column)));
      const isFormula = columns.some(column => cells.isComputed(row, column));
      if (words.length < 2 || values.length * 3 > columns.length || isFormula) continue;
      const [first, last] = [columns[0]!, columns.at(-1)!];
      const own = hostTables.find(each => overlap(wholeTable(each), { row, column: first, rows: 1, columns: last - first + 1 }));
      if (own && own.row !== row) continue;
      const bottom = own ? own.row + own.rows - 1 : bottomOf(cells, row, columns);
      const score = columns.reduce((sum, column) => sum + likeness(cells, row, column, bottom), 0);
      if (bottom === row || score < 3) continue;
      const block = own ?? { row, column: first, rows: bottom - row + 1, columns: last - first + 1 };
      const headings = Array.from({ length: block.columns }, (_, i) => nameOfCell(cells.value(row, block.column + i)));
      found.push({ table: { sheet: cells.sheet, block, headings, hostTable: own !== undefined, below: [] }, score });
    }
  }
  return found
    .sort((a, b) => b.score - a.score)
    .slice(0, MOST_PROPOSED)
    .map(({ table }) => table);
}
