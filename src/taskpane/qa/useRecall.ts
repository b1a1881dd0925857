import { useCallback } from 'react';
import { readGauges, type Gauges } from '../../sheets/gauges/readGauges';
import { piecesSheet, readPieces, type Pieces } from '../../sheets/pieces/readPieces';
import { recordRows, type RecordRow } from '../../sheets/recall/recordRows';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';

/** What recalls are made from. */
export interface RecallSources {
  readonly status: 'ready';
  readonly pieces: Pieces | undefined;
  /** The sheet Pieces, as it is called, whatever it holds. */
  readonly piecesSheet: string | undefined;
  readonly records: readonly RecordRow[];
  readonly gauges: Gauges | undefined;
}

/** Pieces, records and gauges of the workbook, read again when the selection moves. */
export function useRecall(workbook: Workbook) {
  const read = useCallback(async (from: Workbook): Promise<RecallSources> => {
    const read = [readPieces(from), piecesSheet(from), recordRows(from), readGauges(from)] as const;
    const [pieces, sheet, records, gauges] = await Promise.all(read);
    return { status: 'ready', pieces, piecesSheet: sheet, records, gauges };
  }, []);
  return useSettledView<RecallSources>(workbook, read);
}
