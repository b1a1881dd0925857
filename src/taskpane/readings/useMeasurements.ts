import { useCallback, useEffect, useRef, useState } from 'react';
import type { Workbook } from '../../host/workbook';
import { isSameView } from './isSameView';
import { measurementsView, type MeasurementsView } from './measurementsView';

const SETTLED_MS = 150;

/** Follows the selection and what is written beside it: reads the measurements once it has settled; only the newest answer counts. */
export function useMeasurements(workbook: Workbook): MeasurementsView {
  const [view, setView] = useState<MeasurementsView>({ status: 'loading' });
  const newest = useRef(0);
  const refresh = useCallback(() => {
    const turn = ++newest.current;
    setTimeout(async () => {
      if (turn !== newest.current) return;
      const found = await measurementsView(workbook).catch((error: unknown): MeasurementsView => ({
        status: 'failed',
        reason: error instanceof Error ? error.message : String(error),
      }));
      if (turn === newest.current) setView(before => (isSameView(before, found) ? before : found));
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
