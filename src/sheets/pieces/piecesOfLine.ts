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

const key = (...names: readonly string[]) => names.map(pieceKey).join('\u001f');

/** Pieces by what `isOfLine` goes by: looked up for each line of a sheet, a list of thousands must not be gone through each time. */
interface PieceIndex {
  readonly byAssembly: ReadonlyMap<string, readonly Piece[]>;
  readonly byLine: ReadonlyMap<string, readonly Piece[]>;
}

const indexes = new WeakMap<readonly Piece[], PieceIndex>();

function indexOf(all: readonly Piece[]): PieceIndex {
  const known = indexes.get(all);
  if (known) return known;
  const [byAssembly, byLine] = [new Map<string, Piece[]>(), new Map<string, Piece[]>()];
  const add = (map: Map<string, Piece[]>, name: string, piece: Piece) => {
    const found = map.get(name);
    if (found) found.push(piece);
    else map.set(name, [piece]);
  };
  for (const piece of all) {
    add(byAssembly, key(piece.hose, partsOfNumber(piece.piece)?.assembly ?? piece.piece), piece);
    add(byLine, key(piece.hose, piece.order, piece.line, piece.label), piece);
  }
  const index = { byAssembly, byLine };
  indexes.set(all, index);
  return index;
}

function piecesFor(all: readonly Piece[], { hose, assembly, order, line, label }: JobIdentity): readonly Piece[] {
  const { byAssembly, byLine } = indexOf(all);
  return (assembly !== '' ? byAssembly.get(key(hose, assembly)) : byLine.get(key(hose, order, line, label))) ?? [];
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
  const pieces = piecesFor(all, line);
  const good = pieces.filter(piece => statusOfPiece(piece) !== 'scrapped');
  return { pieces, good, open: Math.max(0, (line.quantity ?? 0) - good.length) };
}
