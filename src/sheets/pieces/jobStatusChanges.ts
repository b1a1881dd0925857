import { nameOfCell, type SheetCell } from '../../cells/sheetCell';
import { cellAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { JobLine } from '../jobs/jobLine';
import type { JobTable } from '../jobs/jobTable';
import { jobStatus } from '../jobs/jobStatus';
import type { Writing } from '../print/writing';
import type { Piece, PieceStatus } from './piece';
import { piecesOfLine } from './piecesOfLine';
import { statusOfPiece, statusRank } from './pieceStatus';
import { isTickDue, isUnticked, tickColumn, type TickColumn } from './tickColumn';
import { cellWords, plainValue } from '../../workbook/cellWords';

/** Words that the status of a line is written with; a cell that holds another word is left alone. */
const OURS = /^(?:planned|cut|crimped|tested|done)(?:: \d+ of \d+)?$|^scrapped$/i;

/**
 * Status of a line by its pieces: as far as the piece that is least far. While some are missing: `planned: 3 of 5`, which leaves the
 * line open. "" where nobody has planned any.
 */
export function lineStatus(all: readonly Piece[], line: JobLine): string {
  const { pieces, good } = piecesOfLine(all, line);
  if (pieces.length === 0) return '';
  const ranked = good.map(piece => statusOfPiece(piece) || 'planned').sort((a, b) => statusRank(a) - statusRank(b));
  const least: PieceStatus | undefined = ranked[0];
  if (!least) return 'scrapped';
  const wanted = line.quantity ?? good.length;
  return good.length >= wanted ? least : `${least}: ${good.length} of ${wanted}`;
}

/** Changes that bring the job sheet's status up to its pieces. */
export interface JobStatusChanges {
  readonly writing: Writing | undefined;
  /** Rows whose status says something of its own, which stays. */
  readonly left: readonly { readonly row: number; readonly text: string }[];
  /** Tables without a column for it: one can be added. */
  readonly without: readonly JobTable[];
  /** Columns that get a tick when all pieces are so far, and no words. */
  readonly ticks: readonly TickColumn[];
}

const tableOf = (tables: readonly JobTable[], { row }: JobLine) =>
  tables.find(({ table: { block } }) => row - 1 > block.row && row - 1 < block.row + block.rows) ??
  tables.find(({ table: { below } }) => below.includes(row - 1));

/** What is to be written into a line's cell; undefined where it stays, `left` where it says something of its own. */
function wanted(
  old: SheetCell,
  isFormula: boolean,
  status: string,
  tick: { readonly of: TickColumn; readonly isDue: boolean } | undefined,
): { readonly value: string | number | boolean } | 'left' | undefined {
  const text = nameOfCell(old);
  if (tick) {
    if (!tick.isDue || jobStatus(old) === 'done') return undefined;
    return !isFormula && isUnticked(old) ? { value: tick.of.tick } : 'left';
  }
  if (text.toLowerCase() === status) return undefined;
  if (isFormula || typeof old === 'object' || (text !== '' && !OURS.test(text)))
    return jobStatus(old) === 'done' ? undefined : 'left';
  return { value: status };
}

/**
 * Brings the job sheet's own status column up to the pieces. A column for ticks, like `Cut`, gets its tick once all pieces of a line are
 * so far, and never a word. Only blank cells and words of ours are written: `hold`, `rush` or a formula
 * stay and are told.
 */
export function jobStatusChanges(
  pieces: readonly Piece[],
  { lines, tables }: { readonly lines: readonly JobLine[]; readonly tables: readonly JobTable[] },
): JobStatusChanges {
  const changes: Change[] = [];
  const undo: Change[] = [];
  const left: { row: number; text: string }[] = [];
  const tickColumns = new Map(tables.map(table => [table, tickColumn(table)]));
  for (const line of lines) {
    const found = tableOf(tables, line);
    const column = found?.columns.status;
    const status = lineStatus(pieces, line);
    if (!found || column === undefined || status === '') continue;
    const { cells } = found.reader;
    const row = line.row - 1;
    const old = cells.value(row, column);
    const of = tickColumns.get(found);
    const next = wanted(old, cells.formula(row, column) !== '', status, of && { of, isDue: isTickDue(pieces, line, of) });
    if (next === 'left') left.push({ row: line.row, text: cellWords(old) });
    if (next === undefined || next === 'left') continue;
    const where = { sheet: line.sheet, address: cellAddress({ row, column }) };
    changes.push({ kind: 'values', at: where, values: [[next.value]] });
    undo.push({ kind: 'values', at: where, values: [[plainValue(old)]] });
  }
  const count = changes.length;
  const message = `Status of ${count} ${count === 1 ? 'line' : 'lines'} brought up to date.`;
  return {
    writing: count > 0 ? { changes, undo, message } : undefined,
    left,
    without: tables.filter(({ columns }) => columns.status === undefined),
    ticks: [...tickColumns.values()].filter(each => each !== undefined),
  };
}

/**
 * A column Status to the right of a job table that has none, with the status of the lines that have pieces.
 * @returns undefined where something stands there
 */
export function addStatusColumn(
  { table, reader: { cells } }: JobTable,
  pieces: readonly Piece[] = [],
  lines: readonly JobLine[] = [],
): Writing | undefined {
  const { block } = table;
  const column = block.column + block.columns;
  const rows = Array.from({ length: block.rows }, (_, index) => block.row + index);
  if (!rows.every(row => cells.isEmpty(row, column))) return undefined;
  const at = (row: number) => ({ sheet: table.sheet, address: cellAddress({ row, column }) });
  const own = lines.filter(({ sheet, row }) => sheet === table.sheet && rows.includes(row - 1));
  const statuses = own.flatMap(line => {
    const status = lineStatus(pieces, line);
    return status === '' ? [] : [{ where: at(line.row - 1), status }];
  });
  const written = [{ where: at(block.row), status: 'Status' }, ...statuses];
  return {
    changes: [
      ...written.map(({ where, status }): Change => ({ kind: 'values', at: where, values: [[status]] })),
      { kind: 'style', at: at(block.row), style: { bold: true, wrap: true } },
    ],
    undo: written.map(({ where }): Change => ({ kind: 'values', at: where, values: [['']] })),
    message: `Column Status added to sheet ${table.sheet}.`,
  };
}
