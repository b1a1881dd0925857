import type { Measure } from '../../cells/sheetCell';
import type { Writing } from '../print/writing';
import { changePiece } from './changePiece';
import { growPieces } from './growPieces';
import { PieceNumbers } from './nextNumber';
import { pieceKey, type Piece, type PieceEnd, assemblyOf } from './piece';
import type { PieceBook } from './pieceBook';
import type { PieceCells } from './pieceCells';
import type { PieceEndLetter, PieceUnits } from './pieceColumns';
import { statusOfPiece } from './pieceStatus';

/** What is said when a piece is scrapped. */
export interface Scrapping {
  /** `2026-10-05 07:12`. */
  readonly now: string;
  readonly by: string;
  /** Why; "" where nobody says. */
  readonly why: string;
}

/** Units that missing columns would be written in: the sheet has its own. */
const UNITS: PieceUnits = { length: 'mm', pressure: 'bar' };

function endCells({ fitting, die, dial, target, tolerance, largestSpread }: PieceEnd, letter: PieceEndLetter): PieceCells {
  return {
    [`fitting${letter}`]: fitting || undefined,
    [`die${letter}`]: die || undefined,
    [`dial${letter}`]: dial?.toNumber(),
    [`target${letter}`]: target,
    [`tolerance${letter}`]: tolerance,
    [`largestSpread${letter}`]: largestSpread,
  };
}

/** A row that waits for a plan, with everything that the first one says of how it is made; lots and readings are its own. */
function rowLike(piece: Piece, number: string, more: PieceCells): PieceCells {
  const { line, label, order, hose, cutLength, overall, shortest, longest, machine, testPressure } = piece;
  const measured: Readonly<Record<string, Measure | undefined>> = { cutLength, overall, shortest, longest, testPressure };
  return {
    piece: number,
    line,
    label,
    order,
    hose,
    machine,
    ...measured,
    ...endCells(piece.ends[0], 'A'),
    ...endCells(piece.ends[1], 'B'),
    flushed: '☐',
    capped: '☐',
    useBy: piece.useBy || undefined,
    ...more,
  };
}

/** The row that was made in place of a scrapped piece. */
export const successorOf = (pieces: readonly Piece[], piece: Piece): Piece | undefined =>
  pieces.find(({ replaces }) => replaces !== '' && pieceKey(replaces) === pieceKey(piece.piece));

/**
 * Scraps a piece: its status says so, the note keeps what it was and when, and a successor is added that the next plan takes up.
 * @throws Error with a sentence where it is scrapped already, or the sheet has no room
 */
export function scrapPiece(book: PieceBook, piece: Piece, { now, by, why }: Scrapping): Writing {
  const { pieces } = book;
  if (!pieces) throw new Error('There is no sheet Pieces.');
  if (pieces.table.columns.status === undefined) throw new Error(`Sheet "${book.sheet}" has no column Status: add one.`);
  const was = statusOfPiece(piece);
  if (was === 'scrapped') throw new Error(`Piece ${piece.piece} is scrapped already.`);
  const said = [`scrapped ${now}${by ? ` by ${by}` : ''}`, why].filter(Boolean).join(': ');
  const note = [piece.note, `${said} (was ${was || 'waiting'})`].filter(Boolean).join('; ');
  const marked = changePiece(pieces, piece, { status: 'scrapped', note }, now, new Set(['status']));
  if (pieces.table.columns.note === undefined) {
    throw new Error(`Sheet "${book.sheet}" has no column Note, where old values are kept: add one.`);
  }
  const number = new PieceNumbers(pieces.pieces).next(assemblyOf(piece));
  const isReplaced = successorOf(pieces.pieces, piece) !== undefined;
  const grown = isReplaced
    ? { changes: [], undo: [] }
    : growPieces(book, [rowLike(piece, number, { replaces: piece.piece })], UNITS);
  return {
    changes: [...marked.changes, ...grown.changes],
    undo: [...grown.undo, ...marked.undo],
    message: isReplaced
      ? `Piece ${piece.piece} is scrapped; its successor was there already.`
      : `Piece ${piece.piece} is scrapped; ${number} replaces it and waits for the next cut list.`,
  };
}

/**
 * Adds pieces like an old one; they wait for the next cut list.
 * @param count how many
 * @param today `2026-10-05`
 */
export function makeAgain(book: PieceBook, piece: Piece, count: number, today: string): Writing {
  const { pieces } = book;
  if (!pieces) throw new Error('There is no sheet Pieces.');
  if (!Number.isInteger(count) || count < 1 || count > 1000) throw new Error('How many again? A whole number, 1 or more.');
  const numbers = new PieceNumbers(pieces.pieces);
  const note = `again like ${piece.piece}, ${today}`;
  const rows = Array.from({ length: count }, () => rowLike(piece, numbers.next(assemblyOf(piece)), { note }));
  const { changes, undo } = growPieces(book, rows, UNITS);
  const made = rows.map(row => String(row.piece));
  const message = `${made.length === 1 ? made[0] : `${made[0]} to ${made.at(-1)}`} added: waiting for the next cut list. Targets are those of ${piece.piece}: compare them with the makers’ current data.`;
  return { changes, undo, message };
}
