import type { RangeContent, Workbook } from '../../workbook/workbook';
import { PIECES_SHEET, piecesOf, piecesSheet, type Pieces } from './readPieces';

/** The sheet Pieces as it is to be written to. */
export interface PieceBook {
  readonly sheet: string;
  /** The sheet is there, maybe blank. */
  readonly exists: boolean;
  /** Undefined where the sheet is blank or missing. */
  readonly used: RangeContent | undefined;
  readonly pieces: Pieces | undefined;
}

/**
 * Reads what has to be known before pieces are written.
 * @throws Error with a sentence where a sheet Pieces holds something else, or does not say a unit
 */
export async function pieceBook(workbook: Workbook): Promise<PieceBook> {
  const sheet = await piecesSheet(workbook);
  const used = sheet === undefined ? undefined : await workbook.used(sheet);
  const pieces = used && (await piecesOf(workbook, used));
  if (used && !pieces) {
    throw new Error(
      `Sheet "${sheet}" holds something else: it has no headings Piece and Hose. Rename that sheet; a new one is made.`,
    );
  }
  const open = pieces?.questions[0];
  if (open) throw new Error(`Sheet "${sheet}": ${open.sentence} Answer that first.`);
  return { sheet: sheet ?? PIECES_SHEET, exists: sheet !== undefined, used, pieces };
}
