import { useCallback, useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../host/workbook';
import type { FunctionMetadata } from '../../host/functionMetadata';
import { cellView, type CellView } from './cellView';
import { rowView, type RowResult } from './rowView';

/** What the panel shows: nothing yet, the selected cell and its row, or why that could not be read. */
export type SheetView =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'ready'; readonly cell: CellView; readonly row: readonly RowResult[] };

const SETTLED_MS = 120;

async function look(workbook: Workbook, functions: readonly FunctionMetadata[]): Promise<SheetView> {
  try {
    const selection = await workbook.selection();
    const [cell, row] = await Promise.all([cellView(workbook, functions, selection), rowView(workbook, selection)]);
    return { status: 'ready', cell, row };
  } catch (error) {
    return { status: 'failed', reason: error instanceof Error ? error.message : String(error) };
  }
}

/** Follows the selection: reads it once it has settled, and lets only the newest answer through. */
export function useSheetView(
  workbook: Workbook,
  functions: readonly FunctionMetadata[],
): { view: SheetView; refresh: () => void } {
  const [view, setView] = useState<SheetView>({ status: 'loading' });
  const newest = useRef(0);
  const refresh = useCallback(() => {
    const turn = ++newest.current;
    setTimeout(async () => {
      if (turn !== newest.current) return;
      const found = await look(workbook, functions);
      if (turn === newest.current) setView(found);
    }, SETTLED_MS);
  }, [workbook, functions]);
  useEffect(() => {
    refresh();
    const stop = workbook.onSelection(refresh);
    return () => {
      newest.current += 1;
      stop();
    };
  }, [workbook, refresh]);
  return { view, refresh };
}
