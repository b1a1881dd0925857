import { partsOfNumber, pieceKey, pieceNumber, type Piece } from './piece';

/** Gives numbers of pieces that are not taken: `117-1`, `117-2`, … behind those that are there. */
export class PieceNumbers {
  private readonly taken = new Map<string, Set<number>>();

  constructor(pieces: readonly Pick<Piece, 'piece'>[]) {
    for (const { piece } of pieces) {
      const parts = partsOfNumber(piece);
      if (parts) this.numbersOf(parts.assembly).add(parts.nth);
    }
  }

  private numbersOf(assembly: string): Set<number> {
    const key = pieceKey(assembly);
    let found = this.taken.get(key);
    if (!found) this.taken.set(key, (found = new Set()));
    return found;
  }

  /** Whether pieces of that assembly have numbers already. */
  has(assembly: string): boolean {
    return this.numbersOf(assembly).size > 0;
  }

  /** The next number behind all that are taken. */
  next(assembly: string): string {
    const numbers = this.numbersOf(assembly);
    const nth = Math.max(0, ...numbers) + 1;
    numbers.add(nth);
    return pieceNumber(assembly, nth);
  }
}
