import type { Worksheet } from '@univerjs/core';
import type { SheetLayout } from '../../workbook/workbook';
import type { CellBlock } from '../xlsx/address';

/** Hidden rows of a sheet's used block, by hand or by a filter of the page, and its merged cells. */
export function layoutOf(sheet: Worksheet, used: CellBlock | undefined): SheetLayout {
  const hiddenRows = new Set<number>();
  for (let row = used?.startRow ?? 0; row <= (used?.endRow ?? -1); row++) {
    if (!sheet.getRowVisible(row)) hiddenRows.add(row);
  }
  const merges = sheet.getMergeData().map(({ startRow, startColumn, endRow, endColumn }) => ({
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  }));
  return { hiddenRows, merges };
}
