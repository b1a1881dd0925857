import { useCallback } from 'react';
import { readGauges, type Gauges } from '../../sheets/gauges/readGauges';
import { readPieces, type Pieces } from '../../sheets/pieces/readPieces';
import { recordRows, type RecordRow } from '../../sheets/recall/recordRows';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';

/** What recalls are made from. */
export interface RecallSources {
  readonly status: 'ready';
  readonly pieces: Pieces | undefined;
  readonly records: readonly RecordRow[];
  readonly gauges: Gauges | undefined;
}

/** Pieces, records and gauges of the workbook, read again when the selection moves. */
export function useRecall(workbook: Workbook) {
  const read = useCallback(async (from: Workbook): Promise<RecallSources> => {
    const [pieces, records, gauges] = await Promise.all([readPieces(from), recordRows(from), readGauges(from)]);
    return { status: 'ready', pieces, records, gauges };
  }, []);
  return useSettledView<RecallSources>(workbook, read);
}
