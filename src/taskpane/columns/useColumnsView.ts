import { useCallback, useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../host/workbook';
import { columnsView, type ColumnsView } from './columnsView';

const SETTLED_MS = 120;

/** Follows the selection: reads the table around it once it has settled; only the newest answer counts. */
export function useColumnsView(workbook: Workbook): ColumnsView {
  const [view, setView] = useState<ColumnsView>({ status: 'loading' });
  const newest = useRef(0);
  const refresh = useCallback(() => {
    const turn = ++newest.current;
    setTimeout(async () => {
      if (turn !== newest.current) return;
      const found = await columnsView(workbook).catch((error: unknown): ColumnsView => ({
        status: 'failed',
        reason: error instanceof Error ? error.message : String(error),
      }));
      if (turn === newest.current) setView(found);
    }, SETTLED_MS);
  }, [workbook]);
  useEffect(() => {
    refresh();
    const stop = workbook.onSelection(refresh);
    return () => {
      newest.current += 1;
      stop();
    };
  }, [workbook, refresh]);
  return view;
}
