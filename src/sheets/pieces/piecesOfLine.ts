import { partsOfNumber, pieceKey, type Piece } from './piece';
import { statusOfPiece } from './pieceStatus';

/** What tells one job line from another. */
export interface JobIdentity {
  readonly assembly: string;
  readonly order: string;
  readonly line: string;
  readonly label: string;
  readonly hose: string;
}

const same = (a: string, b: string) => pieceKey(a) === pieceKey(b);

/** True where a piece was made for a line: by the number of its assembly, else by order, line, label and hose. */
export function isOfLine(piece: Piece, line: JobIdentity): boolean {
  if (!same(piece.hose, line.hose)) return false;
  if (line.assembly !== '') return same(partsOfNumber(piece.piece)?.assembly ?? piece.piece, line.assembly);
  return same(piece.order, line.order) && same(piece.line, line.line) && same(piece.label, line.label);
}

/** The pieces of a line, and how many it still wants. */
export interface PiecesOfLine {
  readonly pieces: readonly Piece[];
  /** Those that were not scrapped. */
  readonly good: readonly Piece[];
  /** Pieces that nobody has planned yet; those that wait as successors are not among them. */
  readonly open: number;
}

/** Pieces of a line that is to be made so many times. */
export function piecesOfLine(all: readonly Piece[], line: JobIdentity & { readonly quantity: number | undefined }): PiecesOfLine {
  const pieces = all.filter(piece => isOfLine(piece, line));
  const good = pieces.filter(piece => statusOfPiece(piece) !== 'scrapped');
  return { pieces, good, open: Math.max(0, (line.quantity ?? 0) - good.length) };
}
