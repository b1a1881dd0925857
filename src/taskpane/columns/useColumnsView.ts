import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';
import { columnsView, sameTable, type ColumnsRead } from '../../sheets/columns/columnsView';

/** Reads the table around the selection, and knows the one read before again. */
function tableReader(): (workbook: Workbook) => Promise<ColumnsRead> {
  let before: ColumnsRead = { status: 'loading' };
  return async workbook => (before = sameTable(await columnsView(workbook), before));
}

/** The table around the selection, and how to read it again. */
export function useColumnsView(workbook: Workbook): { readonly view: ColumnsRead; readonly refresh: () => void } {
  const [read] = useState(tableReader);
  return useSettledView(workbook, read);
}
