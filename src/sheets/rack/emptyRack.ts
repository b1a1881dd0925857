import { oneLine } from '../table/cellRuns';
import type { SheetCells } from '../table/sheetCells';
import { rackTable, type RackTable, type RackWays } from './rackTable';

/**
 * The tables of a rack that was used up: their headings are left, which alone make no table elsewhere.
 * @returns none where no row names hose and length
 */
export function emptyRackTables(cells: SheetCells, ways: RackWays): readonly RackTable[] {
  const { column, values } = cells.used;
  const columns = values[0]!.length;
  return values.flatMap((_, index) => {
    const row = cells.used.row + index;
    const headings = values[0]!.map((__, at) => oneLine(cells.value(row, column + at)));
    const block = { row, column, rows: 1, columns };
    return rackTable(cells, { sheet: cells.sheet, block, headings, hostTable: false, below: [] }, ways) ?? [];
  });
}
