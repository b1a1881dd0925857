import { pieceKey, type Piece, assemblyOf } from './piece';
import { statusOfPiece } from './pieceStatus';

/** What tells one job line from another. */
export interface JobIdentity {
  readonly assembly: string;
  readonly order: string;
  readonly line: string;
  readonly label: string;
  readonly hose: string;
}

const key = (...names: readonly string[]) => names.map(pieceKey).join('\u001f');
const byAssembly = (hose: string, assembly: string) => key('assembly', hose, assembly);
const byLine = ({ hose, order, line, label }: Omit<JobIdentity, 'assembly'>) => key('line', hose, order, line, label);

/** A line has the pieces of its assembly's number; one without has those of its order, line and label. Always those of its hose. */
const keyOfLine = (line: JobIdentity) => (line.assembly !== '' ? byAssembly(line.hose, line.assembly) : byLine(line));

/** The keys of the lines that a piece may have been made for. */
const keysOfPiece = (piece: Piece) => [byAssembly(piece.hose, assemblyOf(piece)), byLine(piece)];

/** True where a piece was made for a line. */
export const isOfLine = (piece: Piece, line: JobIdentity): boolean => keysOfPiece(piece).includes(keyOfLine(line));

/** Pieces by key: they are looked up for each line of a sheet, and a list of thousands must not be gone through each time. */
const indexes = new WeakMap<readonly Piece[], ReadonlyMap<string, readonly Piece[]>>();

function indexOf(all: readonly Piece[]): ReadonlyMap<string, readonly Piece[]> {
  const known = indexes.get(all);
  if (known) return known;
  const index = new Map<string, Piece[]>();
  for (const piece of all) {
    for (const name of keysOfPiece(piece)) {
      const found = index.get(name);
      if (found) found.push(piece);
      else index.set(name, [piece]);
    }
  }
  indexes.set(all, index);
  return index;
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
  const pieces = indexOf(all).get(keyOfLine(line)) ?? [];
  const good = pieces.filter(piece => statusOfPiece(piece) !== 'scrapped');
  return { pieces, good, open: Math.max(0, (line.quantity ?? 0) - good.length) };
}
