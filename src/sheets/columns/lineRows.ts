import { addressOf } from '../../workbook/a1';
import { tableRows, type ReadReport } from '../table/tableRows';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import type { Columns } from './tableColumnsOf';

/** A table, its cells, and what its columns are. */
export interface TableLines {
  readonly cells: SheetCells;
  readonly table: FoundTable;
  readonly columns: Columns;
}

/** Rows of a table that are no lines of it, and its last row that is one, zero-based. */
export interface LineRows {
  /** Totals and remarks. */
  readonly others: ReadonlySet<number>;
  readonly last: number;
}

function rowsOf({ cells, table, columns }: TableLines) {
  const keys = Object.values(columns).flatMap(({ first, last }) => [first, last]);
  const all = Array.from({ length: table.block.columns }, (_, i) => table.block.column + i);
  const rules = { name: columns.hose?.first, keys: keys.length > 0 ? keys : all, takesHidden: true };
  return tableRows(cells, table, rules);
}

/** Which rows of a table our columns are for, hidden ones too, and what the others are. */
export function linesReport(lines: TableLines): ReadReport {
  const rows = rowsOf(lines);
  const { sheet, block } = lines.table;
  return {
    sheet,
    tables: [addressOf(block)],
    taken: rows.flatMap(({ row, kind }) => (kind === 'line' ? [row + 1] : [])),
    leftOut: rows.flatMap(({ row, kind }) => (kind === 'line' ? [] : [{ row: row + 1, reason: kind }])),
  };
}

/** Which rows of a table our columns have to do with: remarks and totals below the lines are none of them. */
export function lineRows({ cells, table, columns }: TableLines): LineRows {
  const { block } = table;
  const all = Array.from({ length: block.columns }, (_, i) => block.column + i);
  const rows = rowsOf({ cells, table: { ...table, below: [] }, columns });
  const others = new Set(rows.flatMap(({ row, kind }) => (kind === 'line' ? [] : [row])));
  const holds = (row: number) => all.some(column => !cells.isEmpty(row, column));
  let last = block.row + block.rows - 1;
  while (last > block.row + 1 && (others.has(last) || !holds(last))) last -= 1;
  return { others, last };
}
