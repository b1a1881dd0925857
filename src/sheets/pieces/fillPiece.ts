import { typedNumber } from '../../cells/typedNumber';
import { dayNumber, isoDate } from '../../core/units/sheetDate';
import type { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import type { CatalogueRead } from '../jobs/jobTablesOf';
import type { Writing } from '../print/writing';
import { changePiece } from './changePiece';
import type { Piece } from './piece';
import type { PieceCells } from './pieceCells';
import type { PieceRole } from './pieceColumns';
import { rejections, statusOfPiece } from './pieceStatus';
import type { Pieces } from './readPieces';
import { jobSheetChanges } from './statusWriting';

/** Cells of a piece that the bench fills in beside the readings. */
export const FILLED = [
  'lot',
  'lotA',
  'lotB',
  'ferruleLot',
  'finished',
  'testedAt',
  'testedFor',
  'caliper',
  'gauge',
  'by',
] as const satisfies readonly PieceRole[];
export type FilledRole = (typeof FILLED)[number];

/** What is typed for a piece; a box is ticked or not. */
export type PieceTyped = Readonly<Record<FilledRole, string>> & { readonly flushed: boolean; readonly capped: boolean };

const NUMBERS: ReadonlySet<FilledRole> = new Set(['finished', 'testedAt', 'testedFor']);
const LABELS: Readonly<Partial<Record<FilledRole, string>>> = {
  finished: 'finished length',
  testedAt: 'pressure reached',
  testedFor: 'time under pressure',
};
const [TICKED, OPEN] = ['☑', '☐'];

/** What stands in the row now, as text to edit. */
export function typedOf({ table: { reader, columns } }: Pieces, piece: Piece): PieceTyped {
  const text = (role: FilledRole): string => {
    const column = columns[role];
    const cell = column === undefined ? '' : reader.cells.value(piece.row - 1, column);
    return typeof cell === 'object' ? '' : String(cell);
  };
  const texts = Object.fromEntries(FILLED.map(role => [role, text(role)])) as Record<FilledRole, string>;
  return { ...texts, flushed: piece.flushed, capped: piece.capped };
}

interface Read {
  readonly cells: PieceCells;
  readonly numbers: Readonly<Partial<Record<FilledRole, Decimal>>>;
  readonly mistakes: Readonly<Partial<Record<FilledRole, string>>>;
}

/** The cells that differ from what stands there, and what cannot be read. */
export function readTyped(pieces: Pieces, piece: Piece, typed: PieceTyped): Read {
  const before = typedOf(pieces, piece);
  const cells: Partial<Record<PieceRole, string | number>> = {};
  const numbers: Partial<Record<FilledRole, Decimal>> = {};
  const mistakes: Partial<Record<FilledRole, string>> = {};
  for (const role of FILLED) {
    const text = typed[role].trim();
    if (text === before[role].trim() || pieces.table.columns[role] === undefined) continue;
    if (!NUMBERS.has(role) || text === '') cells[role] = text;
    else {
      const { value, mistake } = typedNumber(text, LABELS[role]!, { sign: 'positive', unit: pieces.table.reader.unitOf(role) });
      if (mistake) mistakes[role] = mistake;
      else if (value) [cells[role], numbers[role]] = [value.toNumber(), value];
    }
  }
  for (const role of ['flushed', 'capped'] as const) {
    if (typed[role] !== before[role]) cells[role] = typed[role] ? TICKED : OPEN;
  }
  return { cells, numbers, mistakes };
}

const measured = (value: Decimal | undefined, unit: MeasureUnit | undefined) => value && unit && { value, unit };

/** The piece as it is once that is written, as far as its status goes. */
function filled(pieces: Pieces, piece: Piece, typed: PieceTyped, { numbers, cells }: Read): Piece {
  const { reader } = pieces.table;
  const of = (role: 'finished' | 'testedAt') =>
    cells[role] === '' ? undefined : (measured(numbers[role], reader.unitOf(role)) ?? piece[role]);
  const finished = of('finished');
  return {
    ...piece,
    finished: finished as Piece['finished'],
    // Its formula follows the new length only once that is written.
    lengthVerdict: finished === piece.finished ? piece.lengthVerdict : '',
    testedAt: of('testedAt'),
    flushed: typed.flushed,
    capped: typed.capped,
  };
}

const UNTRACED: ReadonlySet<PieceRole> = new Set(['status', 'flushed', 'capped']);

/**
 * Fills in the row of a piece: what replaces an old value leaves it, with the time, in the note. Status of the piece and of its job line
 * follow.
 * @param now `2026-10-05 07:12`
 * @param catalogue where it was read already
 * @throws Error with a sentence where something cannot be read, or nothing is new
 */
export async function fillPiece(
  workbook: Workbook,
  pieces: Pieces,
  piece: Piece,
  typed: PieceTyped,
  now: string,
  catalogue?: CatalogueRead,
): Promise<Writing> {
  const read = readTyped(pieces, piece, typed);
  const [mistake] = Object.values(read.mistakes);
  if (mistake) throw new Error(mistake);
  if (Object.keys(read.cells).length === 0) throw new Error(`Nothing is new for piece ${piece.piece}.`);
  const after = filled(pieces, piece, typed, read);
  const status = statusOfPiece(after);
  const day = piece.date === undefined ? dayNumber(now.slice(0, 10)) : undefined;
  const cells: PieceCells = {
    ...read.cells,
    ...(day === undefined ? {} : { date: day }),
    ...(status === piece.status ? {} : { status }),
  };
  const own = changePiece(pieces, piece, cells, now, UNTRACED);
  const all = pieces.pieces.map(each => (each === piece ? { ...after, status } : each));
  const jobs = await jobSheetChanges(workbook, all, catalogue);
  const rejected = rejections(after);
  const message = `Piece ${piece.piece}: written${status === piece.status ? '' : `, now ${status}`}.`;
  return {
    changes: [...own.changes, ...jobs.changes],
    undo: [...jobs.undo, ...own.undo],
    message: rejected.length > 0 ? `${message} It cannot be released: ${rejected.join(', ')}.` : message,
  };
}

/** Day of a piece as text: `2026-10-05`; "" where it has none. */
export const dayOf = ({ date }: Piece): string => (date === undefined ? '' : isoDate(Math.floor(date)));
