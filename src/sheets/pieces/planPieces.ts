import type { JobLine } from '../jobs/jobLine';
import type { Writing } from '../print/writing';
import { growPieces } from './growPieces';
import type { Piece } from './piece';
import type { PieceBook } from './pieceBook';
import type { PieceUnits } from './pieceColumns';
import { countedText } from '../../core/countedText';
import { type PlannedPiece, type ReelOfPieces, type PieceCut, cutsInOrder } from './pieceCuts';
import { type PlanPiecesOptions, PiecePlanner } from './piecePlanner';

/** What writing a cut list does to the sheet Pieces. */
export interface PiecePlan {
  readonly writing: Writing;
  /** Numbers of pieces that were added. */
  readonly added: readonly string[];
  /** Pieces that were there: planned anew on another reel, or waiting ones that are planned now. */
  readonly replanned: readonly string[];
  /** Pieces that stand there already as this plan has them. */
  readonly unchanged: readonly string[];
  /** Worth telling: more cuts than a line wants, numbers of another job. */
  readonly notes: readonly string[];
  /** The number of the piece that each cut becomes; a cut that becomes none is missing. */
  readonly numberOf: ReadonlyMap<PlannedPiece, string>;
  /** The pieces as they are once this is written, as far as the status of their lines goes. */
  readonly after: readonly Piece[];
}

function sentence({ rows, replanned, reeled, unchanged, notes }: PiecePlanner, sheet: string): string {
  const moved = replanned.length - reeled.length;
  const parts = [
    rows.length > 0 && `${countedText(rows.length, 'piece')} added`,
    moved > 0 && `${countedText(moved, 'piece')} put on another reel`,
    reeled.length > 0 && `${countedText(reeled.length, 'waiting piece')} put on a reel`,
    unchanged.length > 0 && `${countedText(unchanged.length, 'piece')} there already`,
  ].filter(Boolean);
  return [`${sheet}: ${parts.join(', ') || 'nothing to add'}.`, ...notes].join(' ');
}

/**
 * Plans the rows of the sheet Pieces for a cut list: one a piece, with its reel and lot. A piece that stands there is not doubled: one that
 * is planned only is put on the reel of this plan, its old reel kept in the note; one that is in work stays as it is.
 * @param lines the job lines that were planned
 * @throws Error with a sentence where the sheet has no room, or a cut is for a line that is not there
 */
export function planPieces(
  book: PieceBook,
  reels: readonly ReelOfPieces[],
  lines: readonly JobLine[],
  options: PlanPiecesOptions,
): PiecePlan {
  const planner = new PiecePlanner(book, options);
  const byRow = new Map<number, PieceCut[]>();
  for (const cut of cutsInOrder(reels, options.order ?? [])) {
    const { row, waits } = cut.cut.line;
    if (waits !== undefined) planner.waiting(cut, waits);
    else byRow.set(row, [...(byRow.get(row) ?? []), cut]);
  }
  for (const [row, cuts] of byRow) {
    const line = lines.find(each => each.row === row);
    if (!line) throw new Error(`The plan cuts for row ${row}, which is no job line any more: plan again.`);
    planner.line(line, cuts);
  }
  const units: PieceUnits = { length: options.unit, pressure: options.pressureUnit };
  const grown = growPieces(book, planner.rows, units);
  return {
    writing: {
      changes: [...planner.changed.flatMap(({ changes }) => changes), ...grown.changes],
      undo: [...grown.undo, ...planner.changed.flatMap(({ undo }) => undo)],
      message: sentence(planner, book.sheet),
    },
    added: planner.rows.map(({ piece }) => piece),
    replanned: planner.replanned,
    unchanged: planner.unchanged,
    notes: planner.notes,
    numberOf: planner.numberOf,
    after: planner.after,
  };
}
