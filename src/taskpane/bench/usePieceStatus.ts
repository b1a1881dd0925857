import { useEffect, useState, type MutableRefObject } from 'react';
import type { EntryState } from '../../sheets/crimps/entry';
import type { CatalogueRead } from '../../sheets/jobs/jobTablesOf';
import { PIECES_SHEET } from '../../sheets/pieces/readPieces';
import { statusWriting } from '../../sheets/pieces/statusWriting';
import { thisMoment } from '../../sheets/table/today';
import type { Workbook } from '../../workbook/workbook';
import type { WhenEntered } from './useEntry';
import type { usePiece } from './usePiece';
import { errorSentence } from '../../workbook/errorSentence';
import { plainValue } from '../../workbook/cellWords';

const isPieces = (sheet: string | undefined) => sheet?.toLowerCase() === PIECES_SHEET.toLowerCase();

/**
 * Keeps the status of pieces and job lines with the readings that are entered on the sheet Pieces, and shows the piece that is in work.
 * @param read the catalogue that the crimps are judged by: it is not looked for again at each crimp
 * @returns why the status could not be written, "" where it was; and the piece whose readings are entered
 */
export function usePieceStatus(
  workbook: Workbook,
  { rows, index }: EntryState,
  piece: ReturnType<typeof usePiece>,
  onEnteredRef: MutableRefObject<WhenEntered>,
  read: CatalogueRead | undefined,
): { readonly refusal: string; readonly inWork: string } {
  const [refusal, setRefusal] = useState('');
  const row = rows[index];
  const inWork = row && isPieces(row.sheet) ? row.piece : '';
  const { find } = piece;
  const isShown = piece.shown.kind === 'found';
  useEffect(() => {
    // A piece that is shown stays: its test may still have to be filled in while the next one is crimped.
    if (inWork !== '' && !isShown) void find(inWork, false);
  }, [inWork, isShown, find]);
  useEffect(() => {
    onEnteredRef.current = ({ sheet, cells }, at) => {
      if (!isPieces(sheet)) return;
      const replaced = cells.flatMap(({ address, before }) => (before === '' ? [] : [`${address} ${plainValue(before)}`]));
      statusWriting(workbook, thisMoment(), { row: at, replaced }, read)
        .then(writing => writing && workbook.write(writing.changes))
        .then(
          () => {
            setRefusal('');
            piece.refresh();
          },
          (error: unknown) => setRefusal(errorSentence(error)),
        );
    };
  });
  return { refusal, inWork };
}
