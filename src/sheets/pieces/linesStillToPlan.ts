import { quantityOf, type JobLine } from '../jobs/jobLine';
import { jobStatus } from '../jobs/jobStatus';
import type { LeftOutRow, Takeable } from '../table/tableRows';
import type { Length } from '../../core/units/lengthUnit';
import type { Piece } from './piece';
import { numbersText, otherLengthsText } from './cardPieces';
import { isOtherLength, isVague, piecesOfLine } from './piecesOfLine';
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
  /** Pieces that are planned already and are planned anew with it. */
  readonly anew?: readonly Piece[];
}

/** A line without order and assembly number, and pieces that may be its own or another week's. */
export interface AlikeLine {
  readonly line: JobLine;
  readonly good: readonly Piece[];
  /** Nobody has cut all of them yet. */
  readonly isPlanned: boolean;
  /** Some were planned for another length than the line has now. */
  readonly isOther: boolean;
  /** They are fewer than the line wants. */
  readonly isPartly: boolean;
}

/** What is known beside the sheets. */
export interface KnownOfLines {
  /** What the bench can cut. */
  readonly step?: Length;
  /** Whether the pieces that look like a line's are known to be its own. */
  readonly isKnown?: (line: JobLine) => boolean;
}

/** Lines with what is still to be cut of them, and those of which all pieces are planned or made. */
export interface LinesStillToPlan {
  readonly lines: readonly StillToPlan[];
  readonly leftOut: readonly LeftOutRow[];
  /** Rows among those left out that have neither order nor assembly number: a new week's line may only look like an old one. */
  readonly lookAlike: readonly (LeftOutRow & { readonly reason: 'planned' | 'done' })[];
  /** The same lines with their pieces. */
  readonly alike: readonly AlikeLine[];
  /** Rows whose pieces have another length than the line has now, and are left as they are. */
  readonly otherLength: readonly { readonly row: number; readonly sentence: string }[];
}

/** What the status says of a line some of whose pieces are in work: without them nobody knows what is left of it. */
const PARTLY_OURS = /: \d+ of \d+$/;

/** What pieces have instead of the line's length, at the end of a sentence. */
function lengthsText(other: readonly Piece[], line: JobLine): string {
  const text = otherLengthsText(other, line);
  return text && `, ${text}`;
}

/**
 * What is still to be planned of each line, going by its pieces: a line is planned once. With a tick for planned lines their pieces are
 * planned anew, those that are in work are not; with one for lines that are done they are made once more. Pieces that may be another
 * week's count for nothing without being asked about.
 */
export function linesStillToPlan(
  pieces: readonly Piece[],
  lines: readonly JobLine[],
  take: ReadonlySet<Takeable>,
  { step, isKnown = () => false }: KnownOfLines = {},
): LinesStillToPlan {
  const still: StillToPlan[] = [];
  const leftOut: LeftOutRow[] = [];
  const lookAlike: { row: number; reason: 'planned' | 'done'; sentence: string }[] = [];
  const alike: AlikeLine[] = [];
  const otherLength: { row: number; sentence: string }[] = [];
  for (const line of lines) {
    const { good, open } = piecesOfLine(pieces, line, { anyLength: true });
    const planned = good.filter(piece => statusOfPiece(piece) === 'planned');
    const other = good.filter(piece => isOtherLength(piece, line, step));
    const isOther = other.length > 0;
    // What the status says was written for this very line.
    const saysOurs = jobStatus(line.status) === 'planned' || PARTLY_OURS.test(line.status);
    const isSure = !isVague(line) || isKnown(line) || (!isOther && saysOurs);
    // Anew: all that is wanted but for what is cut or further, however many are planned.
    const isAnew = take.has('planned') && planned.length > 0 && (isSure || !isOther);
    const anew = isAnew ? Math.max(0, quantityOf(line) - (good.length - planned.length)) : 0;
    const stay = isAnew ? other.filter(piece => !planned.includes(piece)) : other;
    if (stay.length > 0) {
      const names = numbersText(stay.map(({ piece }) => piece));
      otherLength.push({ row: line.row, sentence: `${names}${lengthsText(stay, line)}` });
    }
    const leave = (reason: 'planned' | 'done', count: number, where: string) => {
      const counted =
        open > 0 && !isOther ? `${count} of ${countedText(quantityOf(line), 'piece')}` : countedText(count, 'piece');
      const sentence = `${counted} ${where}${lengthsText(other, line)}`;
      const row = { row: line.row, reason, sentence: isSure ? sentence : `${sentence}, known by line, label and hose only` };
      leftOut.push(row);
      if (isSure) return;
      lookAlike.push(row);
      alike.push({ line, good, isPlanned: planned.length > 0, isOther, isPartly: open > 0 });
    };
    if (good.length === 0 && PARTLY_OURS.test(line.status)) {
      leftOut.push({
        row: line.row,
        reason: 'problem',
        sentence: `its status says ${line.status}, but sheet Pieces has none of it`,
      });
    } else if (good.length === 0 && line.standing.kind === 'planned') leftOut.push({ row: line.row, reason: 'planned' });
    else if (good.length === 0) still.push({ line, quantity: quantityOf(line), isMore: false, isAgain: false });
    else if (anew > 0) still.push({ line, quantity: anew, isMore: false, isAgain: false, anew: planned });
    else if (open > 0 && isSure && !isOther && line.standing.kind === 'planned' && line.standing.reasons.length > 0)
      leftOut.push({ row: line.row, reason: 'stop', sentence: line.standing.reasons.join('; ') });
    else if (open > 0 && isSure && !isOther) still.push({ line, quantity: open, isMore: true, isAgain: false });
    else if (planned.length > 0) leave('planned', planned.length, 'on sheet Pieces');
    else if (take.has('done')) still.push({ line, quantity: quantityOf(line), isMore: true, isAgain: true });
    else leave('done', good.length, 'in work or done on sheet Pieces');
  }
  return { lines: still, leftOut, lookAlike, alike, otherLength };
}
