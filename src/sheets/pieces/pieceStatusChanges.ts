import type { Writing } from '../print/writing';
import { changePiece } from './changePiece';
import { statusOfPiece } from './pieceStatus';
import type { Pieces } from './readPieces';

/** Brings the column Status up to what the rows are filled with: a status only moves on, so nothing is lost. Undefined where all fit. */
export function pieceStatusChanges(pieces: Pieces, now: string): Writing | undefined {
  const moved = pieces.pieces.filter(piece => statusOfPiece(piece) !== piece.status);
  if (moved.length === 0 || pieces.table.columns.status === undefined) return undefined;
  const all = moved.map(piece => changePiece(pieces, piece, { status: statusOfPiece(piece) }, now, new Set(['status'])));
  return {
    changes: all.flatMap(({ changes }) => changes),
    undo: all.flatMap(({ undo }) => undo),
    message: `Status of ${moved.length} ${moved.length === 1 ? 'piece' : 'pieces'} brought up to date.`,
  };
}
