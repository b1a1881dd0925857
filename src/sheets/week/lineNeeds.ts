import type { JobLine } from '../jobs/jobLine';
import type { Piece } from '../pieces/piece';
import { piecesOfLine } from '../pieces/piecesOfLine';
import { statusOfPiece } from '../pieces/pieceStatus';

/** What a line still needs, going by its pieces. */
export interface LineNeeds {
  /** Pieces whose reels the cut list has named, not cut yet. */
  readonly planned: readonly Piece[];
  /** Pieces that no cut list has: their hose comes from the rack. */
  readonly unplanned: number;
  /** Pieces whose couplings are not crimped on yet. */
  readonly toCrimp: number;
}

/** Pieces of a line by how far they are: without any, the whole line is still to be planned. */
export function lineNeeds(all: readonly Piece[], line: JobLine): LineNeeds {
  const { good, open } = piecesOfLine(all, line);
  const at = (status: string) => good.filter(piece => statusOfPiece(piece) === status);
  const planned = at('planned');
  const unplanned = open + at('').length;
  return { planned, unplanned, toCrimp: planned.length + unplanned + at('cut').length };
}
