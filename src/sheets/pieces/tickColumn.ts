import { jobStatus } from '../jobs/jobStatus';
import type { JobLine } from '../jobs/jobLine';
import type { JobTable } from '../jobs/jobTable';
import { headingForms } from '../table/heading';
import { nameOfCell, type SheetCell } from '../../cells/sheetCell';
import type { Piece, PieceStatus } from './piece';
import { piecesOfLine } from './piecesOfLine';
import { statusOfPiece, statusRank } from './pieceStatus';

/** A column that is ticked when something has happened: no words are written into it. */
export interface TickColumn {
  readonly heading: string;
  /** How far all pieces of a line must be. */
  readonly from: PieceStatus;
  /** The tick that the column uses. */
  readonly tick: string | number | boolean;
}

/** What headings that are no status say has happened. */
const HAPPENED: readonly (readonly [RegExp, PieceStatus])[] = [
  [/^cut$/, 'cut'],
  [/^crimped$/, 'crimped'],
  [/^tested$/, 'tested'],
  [/^(?:made|done|finished|complete|completed)$/, 'done'],
];
const TICK = /^(?:x|y|n|yes|no|true|false|✓|✔|☑|☐|1|0|ok)$/i;
const UNTICKED = /^(?:|false|☐|0|no|n)$/i;

/** True where a cell of a tick column is still to be ticked. */
export const isUnticked = (cell: SheetCell): boolean => UNTICKED.test(nameOfCell(cell));

/** Whether a job table's status column is for ticks: its heading says what has happened, or nothing but ticks stands in it. */
export function tickColumn({ table: { block }, columns: { status }, reader }: JobTable): TickColumn | undefined {
  if (status === undefined) return undefined;
  const rows = Array.from({ length: block.rows - 1 }, (_, index) => block.row + 1 + index);
  const filled = rows.map(row => reader.cells.value(row, status)).filter(cell => nameOfCell(cell) !== '');
  const heading = reader.heading('status');
  const happened = HAPPENED.find(([words]) => headingForms(heading).some(form => words.test(form)))?.[1];
  const areTicks = filled.length > 0 && filled.every(cell => TICK.test(nameOfCell(cell)));
  if (!areTicks && happened === undefined) return undefined;
  // A column `Cut` in which somebody keeps words is one for words.
  if (filled.some(cell => jobStatus(cell) === 'planned')) return undefined;
  const ticked = filled.find(cell => TICK.test(nameOfCell(cell)) && !isUnticked(cell));
  const isBox = filled.some(cell => typeof cell === 'boolean');
  return { heading, from: happened ?? 'done', tick: isBox || typeof ticked === 'object' ? true : (ticked ?? '✓') };
}

/** True where all pieces of a line that are wanted are as far as the tick says. */
export function isTickDue(all: readonly Piece[], line: JobLine, { from }: TickColumn): boolean {
  const { good } = piecesOfLine(all, line);
  const enough = good.filter(piece => statusRank(statusOfPiece(piece)) >= statusRank(from));
  return good.length > 0 && enough.length === good.length && good.length >= (line.quantity ?? good.length);
}
