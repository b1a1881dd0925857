import { quantityOf, type JobLine } from '../jobs/jobLine';
import type { LeftOutRow, Takeable } from '../table/tableRows';
import type { Piece } from './piece';
import { piecesOfLine } from './piecesOfLine';
import { statusOfPiece } from './pieceStatus';
import { countedText } from '../../core/countedText';

/** How many pieces of a line are to be cut, beside those that the sheet Pieces has. */
export interface StillToPlan {
  readonly line: JobLine;
  readonly quantity: number;
  /** Each cut is a piece more: those that are planned stay on their reels. */
  readonly isMore: boolean;
  /** Somebody wants the line made once more, though its pieces are in work or done. */
  readonly isAgain: boolean;
}

/** Lines with what is still to be cut of them, and those of which all pieces are planned or made. */
export interface LinesStillToPlan {
  readonly lines: readonly StillToPlan[];
  readonly leftOut: readonly LeftOutRow[];
  /** Rows among those left out that have neither order nor assembly number: a new week's line may only look like an old one. */
  readonly lookAlike: readonly (LeftOutRow & { readonly reason: 'planned' | 'done' })[];
}

/** What the status says of a line some of whose pieces are in work: without them nobody knows what is left of it. */
const PARTLY_OURS = /: \d+ of \d+$/;

/**
 * What is still to be planned of each line, going by its pieces: a line is planned once. With a tick for planned lines their pieces are
 * planned anew, those that are in work are not; with one for lines that are done they are made once more.
 */
export function linesStillToPlan(
  pieces: readonly Piece[],
  lines: readonly JobLine[],
  take: ReadonlySet<Takeable>,
): LinesStillToPlan {
  const still: StillToPlan[] = [];
  const leftOut: LeftOutRow[] = [];
  const lookAlike: { row: number; reason: 'planned' | 'done'; sentence: string }[] = [];
  const leave = (line: JobLine, reason: 'planned' | 'done', sentence: string) => {
    const isVague = line.order === '' && line.assembly === '';
    const row = { row: line.row, reason, sentence: isVague ? `${sentence}, known by line, label and hose only` : sentence };
    leftOut.push(row);
    if (isVague) lookAlike.push(row);
  };
  for (const line of lines) {
    const { good, open } = piecesOfLine(pieces, line);
    const planned = good.filter(piece => statusOfPiece(piece) === 'planned').length;
    const again = take.has('planned') ? planned : 0;
    if (good.length === 0 && PARTLY_OURS.test(line.status)) {
      leftOut.push({
        row: line.row,
        reason: 'problem',
        sentence: `its status says ${line.status}, but sheet Pieces has none of it`,
      });
    } else if (good.length === 0) still.push({ line, quantity: quantityOf(line), isMore: false, isAgain: false });
    else if (open + again > 0) still.push({ line, quantity: open + again, isMore: again === 0, isAgain: false });
    else if (planned > 0) leave(line, 'planned', `${countedText(planned, 'piece')} on sheet Pieces`);
    else if (take.has('done')) still.push({ line, quantity: quantityOf(line), isMore: true, isAgain: true });
    else leave(line, 'done', `${countedText(good.length, 'piece')} in work or done on sheet Pieces`);
  }
  return { lines: still, leftOut, lookAlike };
}
