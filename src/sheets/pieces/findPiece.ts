import { partsOfNumber, pieceKey, type Piece } from './piece';

/** What a scanned or typed text means. */
export type FoundPiece =
  | { readonly kind: 'found'; readonly piece: Piece }
  | { readonly kind: 'several'; readonly pieces: readonly Piece[] }
  | { readonly kind: 'none' };

const oneOf = (pieces: readonly Piece[]): FoundPiece | undefined =>
  pieces.length === 1 ? { kind: 'found', piece: pieces[0]! } : pieces.length > 1 ? { kind: 'several', pieces } : undefined;

/**
 * Finds a piece by the text of its tag: its number, or the number of an assembly that has one piece only. A keyboard scanner may add a
 * line end.
 */
export function findPiece(pieces: readonly Piece[], text: string): FoundPiece {
  const key = pieceKey(text);
  if (key === '') return { kind: 'none' };
  const exact = oneOf(pieces.filter(({ piece }) => pieceKey(piece) === key));
  if (exact) return exact;
  const ofAssembly = pieces.filter(({ piece }) => pieceKey(partsOfNumber(piece)?.assembly ?? '') === key);
  return oneOf(ofAssembly) ?? { kind: 'none' };
}
