import { useState } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';
import { columnsView, sameTable, type ColumnsView } from '../../sheets/table/columnsView';

/** Reads the table around the selection, and knows the one read before again. */
function tableReader(): (workbook: Workbook) => Promise<ColumnsView> {
  let before: ColumnsView = { status: 'loading' };
  return async workbook => (before = sameTable(await columnsView(workbook), before));
}

/** The table around the selection. */
export function useColumnsView(workbook: Workbook): ColumnsView {
  const [read] = useState(tableReader);
  return useSettledView(workbook, read).view;
}
