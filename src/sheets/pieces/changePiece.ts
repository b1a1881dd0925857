import { cellAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { Piece } from './piece';
import { writtenIn, type PieceCells } from './pieceCells';
import type { PieceRole } from './pieceColumns';
import type { Pieces } from './readPieces';
import { plainValue } from '../../workbook/cellWords';

/** Changes of cells, and those that take them back. */
export interface PieceChanges {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
}

const together = (notes: readonly string[]) => notes.filter(Boolean).join('; ');

/** What the note says of values that were replaced: `lot L70 until 2026-10-05 07:12`. */
export const trace = (note: string, replaced: readonly string[], now: string): string =>
  replaced.length === 0 ? note : together([note, `${replaced.join(', ')} until ${now}`]);

/**
 * Writes into the row of a piece. Old values that are replaced go into the note, with the time; the note is added where `cells` has none.
 * @param now `2026-10-05 07:12`
 * @param untraced roles whose old value needs no trace: a status that only moves on
 * @throws Error where the note has no column to stand in
 */
export function changePiece(
  { sheet, table: { columns, reader } }: Pieces,
  piece: Piece,
  cells: PieceCells,
  now: string,
  untraced: ReadonlySet<PieceRole> = new Set(),
): PieceChanges {
  const row = piece.row - 1;
  const replaced: string[] = [];
  const changes: Change[] = [];
  const undo: Change[] = [];
  const write = (role: PieceRole, value: string | number | boolean) => {
    const column = columns[role];
    if (column === undefined) return;
    const where = { sheet, address: cellAddress({ row, column }) };
    const formula = reader.cells.formula(row, column);
    const old = reader.cells.value(row, column);
    const shown = plainValue(old);
    if (shown === value && formula === '') return;
    changes.push({ kind: 'values', at: where, values: [[value]] });
    undo.push(
      formula === '' ? { kind: 'values', at: where, values: [[shown]] } : { kind: 'formulas', at: where, formulas: [[formula]] },
    );
    if (shown !== '' && role !== 'note' && !untraced.has(role)) replaced.push(`${reader.heading(role)} ${shown}`);
  };
  for (const [role, value] of Object.entries(cells) as [PieceRole, PieceCells[PieceRole]][]) {
    if (role !== 'note') write(role, writtenIn(role, value, reader.unitOf(role)?.symbol));
  }
  const note = trace(typeof cells.note === 'string' ? cells.note : piece.note, replaced, now);
  if (replaced.length > 0 && columns.note === undefined) {
    throw new Error(`Sheet "${sheet}" has no column Note, where old values are kept: add one.`);
  }
  if (note !== piece.note) write('note', note);
  return { changes, undo };
}
