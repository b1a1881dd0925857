import { useCallback } from 'react';
import type { Workbook } from '../../../workbook/workbook';
import type { FunctionMetadata } from '../../../workbook/functionMetadata';
import { useSettledView, type UnreadView } from '../../controls/useSettledView';
import { cellView, type CellView } from '../../../sheets/explain/cellView';
import { rowView, type RowResult } from '../../../sheets/explain/rowView';

/** What the strip shows: nothing yet, the selected cell and its row, or why that could not be read. */
export type ExplainedCellView =
  UnreadView | { readonly status: 'ready'; readonly cell: CellView; readonly row: readonly RowResult[] };

/** The selected cell and its row. */
export function useExplainedCell(workbook: Workbook, functions: readonly FunctionMetadata[]): ExplainedCellView {
  const read = useCallback(
    async (of: Workbook): Promise<ExplainedCellView> => {
      const selection = await of.selection();
      const [cell, row] = await Promise.all([cellView(of, functions, selection), rowView(of, selection)]);
      return { status: 'ready', cell, row };
    },
    [functions],
  );
  return useSettledView(workbook, read).view;
}
