import type { Decimal } from '../../core/units/decimal';

/** One cut of a plan: for which line of the job sheet, or for which piece that waits. */
export interface PlannedPiece {
  readonly length: Decimal;
  readonly line: {
    readonly row: number;
    readonly line: string;
    /** The piece that waits for this cut; else the cut is for a line of the job sheet. */
    readonly waits?: string | undefined;
    /** Only what the line still wants beside its pieces was planned: each cut is a piece more; false where its planned pieces are planned anew. */
    readonly isMore?: boolean | undefined;
    /** The line is made once more: its cuts are added however many pieces there are. */
    readonly isAgain?: boolean | undefined;
  };
  /** Which piece of the line in this plan: 1 … */
  readonly piece: number;
}

/** A reel of a plan with what is cut from it; the reels of a cut list are of this shape. */
export interface ReelOfPieces {
  readonly rack: { readonly lot: string; readonly place: string; readonly reel?: string | undefined };
  readonly cuts: readonly PlannedPiece[];
}

export interface PieceCut {
  readonly cut: PlannedPiece;
  readonly reel: ReelOfPieces['rack'];
}

/** All cuts in the order of work. */
export function cutsInOrder(reels: readonly ReelOfPieces[], order: readonly number[]): readonly PieceCut[] {
  const rank = new Map(order.map((row, index) => [row, index]));
  const of = ({ cut }: PieceCut) => (cut.line.waits === undefined ? rank.get(cut.line.row) : undefined) ?? order.length;
  return reels
    .flatMap(({ rack, cuts }) => cuts.map(cut => ({ cut, reel: rack })))
    .sort((a, b) => of(a) - of(b) || a.cut.line.row - b.cut.line.row || a.cut.piece - b.cut.piece);
}
