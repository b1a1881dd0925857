import { BooleanNumber, type Worksheet } from '@univerjs/core';
import type { SheetLayout } from '../../workbook/workbook';
import type { CellBlock } from '../xlsx/address';

/** What is hidden of a sheet: all of it, rows (by hand or by a filter of the page) and columns of its used block; and its merged cells. */
export function layoutOf(sheet: Worksheet, used: CellBlock | undefined): SheetLayout {
  const hiddenRows = new Set<number>();
  for (let row = used?.startRow ?? 0; row <= (used?.endRow ?? -1); row++) {
    if (!sheet.getRowVisible(row)) hiddenRows.add(row);
  }
  const hiddenColumns = new Set<number>();
  for (let column = used?.startColumn ?? 0; column <= (used?.endColumn ?? -1); column++) {
    if (!sheet.getColVisible(column)) hiddenColumns.add(column);
  }
  const merges = sheet.getMergeData().map(({ startRow, startColumn, endRow, endColumn }) => ({
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  }));
  return { hiddenRows, hiddenColumns, isHidden: sheet.isSheetHidden() === BooleanNumber.TRUE, merges };
}
