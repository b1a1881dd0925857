import { dateOrders, type DateOrders } from '../../core/units/sheetDate';
import type { FoundTable } from './findTables';
import type { SheetCells } from './sheetCells';

/** The order of day and month in a column of dates, as all its texts together say it: `9/13/2026` settles `9/1/2026`. */
export function columnDateOrders(
  cells: SheetCells,
  { block, below }: Pick<FoundTable, 'block' | 'below'>,
  column: number,
): DateOrders {
  const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).concat(below);
  return dateOrders(rows.map(row => cells.value(row, column)).filter(cell => typeof cell === 'string'));
}
