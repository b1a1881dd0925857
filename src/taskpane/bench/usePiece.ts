import { useCallback, useEffect, useRef, useState } from 'react';
import type { CatalogueRead } from '../../sheets/jobs/jobTablesOf';
import { fillPiece, typedOf } from '../../sheets/pieces/fillPiece';
import { findPiece } from '../../sheets/pieces/findPiece';
import { pieceKey, type Piece } from '../../sheets/pieces/piece';
import { pieceBook } from '../../sheets/pieces/pieceBook';
import { readPieces, type Pieces } from '../../sheets/pieces/readPieces';
import { typedNow, type PieceEdit } from '../../sheets/pieces/pieceEdit';
import { makeAgain } from '../../sheets/pieces/scrapPiece';
import { scrapWriting } from '../../sheets/pieces/statusWriting';
import { thisMoment } from '../../sheets/table/today';
import type { Workbook } from '../../workbook/workbook';
import { useWriting } from '../controls/useWriting';
import { errorSentence } from '../../workbook/errorSentence';

/** What a scanned or typed text led to. */
export type PieceShown =
  | { readonly kind: 'none' }
  | { readonly kind: 'found'; readonly pieces: Pieces; readonly piece: Piece }
  | { readonly kind: 'several'; readonly pieces: readonly Piece[] }
  | { readonly kind: 'failed'; readonly sentence: string };

async function look(workbook: Workbook, text: string): Promise<PieceShown> {
  try {
    const pieces = await readPieces(workbook);
    if (!pieces) return { kind: 'failed', sentence: 'There is no sheet Pieces yet: writing a cut list makes it.' };
    const found = findPiece(pieces.pieces, text);
    if (found.kind === 'found') return { kind: 'found', pieces, piece: found.piece };
    if (found.kind === 'several') return found;
    return { kind: 'failed', sentence: `No piece is called “${text.trim()}”.` };
  } catch (error) {
    return { kind: 'failed', sentence: errorSentence(error) };
  }
}

/**
 * A piece by its number or its tag, and what is written to it.
 * @param onRow the piece stands in this row of its sheet: readings are entered there
 * @param read the catalogue that the crimps are judged by: it is not looked for again at each save
 */
export function usePiece(workbook: Workbook, onRow: (row: number) => void, read?: CatalogueRead) {
  const [shown, setShown] = useState<PieceShown>({ kind: 'none' });
  const latest = useRef(0);
  const leadTo = useRef(onRow);
  useEffect(() => {
    leadTo.current = onRow;
  });
  const find = useCallback(
    async (text: string, leads = true) => {
      const turn = ++latest.current;
      const found = await look(workbook, text);
      if (turn !== latest.current) return;
      setShown(found);
      if (found.kind !== 'found' || !leads) return;
      await workbook.select({ sheet: found.piece.sheet, address: `A${found.piece.row}` });
      leadTo.current(found.piece.row);
    },
    [workbook],
  );
  const number = shown.kind === 'found' ? shown.piece.piece : undefined;
  const again = () => void (number === undefined ? undefined : find(number, false));
  const { outcome, write, undo } = useWriting(workbook, again);
  useEffect(() => () => void (latest.current += 1), []);

  /** The piece as its sheet has it now: it may have been sorted or filled in since. */
  const now = async () => {
    const book = await pieceBook(workbook);
    const piece = book.pieces?.pieces.find(each => pieceKey(each.piece) === pieceKey(number ?? ''));
    if (!book.pieces || !piece) throw new Error(`Piece ${number} is no longer on sheet ${book.sheet}.`);
    return { book, pieces: book.pieces, piece };
  };
  const typedOverNow = (edit: PieceEdit, pieces: Pieces, piece: Piece) => {
    try {
      return typedNow(edit, typedOf(pieces, piece), role => pieces.table.reader.heading(role));
    } catch (error) {
      // The card shows what came meanwhile; what is typed stays in it.
      again();
      throw error;
    }
  };
  return {
    shown,
    find,
    /** The row was written to elsewhere: read the piece again. */
    refresh: again,
    outcome,
    undo: () => void undo(),
    fill: (edit: PieceEdit) =>
      write(async () => {
        const { pieces, piece } = await now();
        return fillPiece(workbook, pieces, piece, typedOverNow(edit, pieces, piece), thisMoment(), read);
      }),
    scrap: (why: string, by: string) =>
      write(async () => {
        const { book, piece } = await now();
        return scrapWriting(workbook, book, piece, { now: thisMoment(), by, why }, read);
      }),
    makeAgain: (count: number) =>
      write(async () => {
        const { book, piece } = await now();
        return makeAgain(book, piece, count, thisMoment().slice(0, 10));
      }),
  };
}
