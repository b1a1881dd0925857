import type { Piece } from '../pieces/piece';
import { isCrimpedEnd, statusOfPiece } from '../pieces/pieceStatus';
import { recallFinding, type Finding, type LotCell, type Traces } from './recallFinding';
import type { KnownGauge, RecallRequest } from './recallRequest';

/** A piece that belongs to what is asked back, or that cannot be excluded. */
export interface RecalledPiece extends Finding {
  readonly piece: Piece;
}

/** The lots that a piece ought to name. */
function lotCells({ hose, lot, ends, ferruleLot }: Piece): readonly LotCell[] {
  const crimped = ends.filter(isCrimpedEnd);
  return [
    { of: 'hose', label: 'hose lot', part: hose, lot },
    ...ends.flatMap((end, index): LotCell[] =>
      isCrimpedEnd(end) ? [{ of: 'fitting', label: `lot ${index === 0 ? 'A' : 'B'}`, part: end.fitting, lot: end.lot }] : [],
    ),
    ...(crimped.length > 0 ? [{ of: 'ferrule' as const, label: 'ferrule lot', part: '', lot: ferruleLot }] : []),
  ];
}

const isUnmade = (piece: Piece) => ['', 'planned'].includes(statusOfPiece(piece));

const tracesOf = (piece: Piece): Traces => ({
  lots: lotCells(piece),
  gauges: piece.gauges,
  dies: piece.ends.filter(isCrimpedEnd).map(({ die }) => die),
  isMeasured: piece.finished !== undefined || piece.ends.some(({ readings }) => readings.some(reading => reading !== undefined)),
  isTested: piece.testedAt !== undefined,
  isMade: !isUnmade(piece),
  day: piece.date,
});

/**
 * The pieces that belong to what is asked back, and those that cannot be excluded because their row does not say: in the order of the
 * sheet. Scrapped ones are among them, with that status.
 */
export function recallPieces(
  pieces: readonly Piece[],
  request: RecallRequest,
  known: readonly KnownGauge[] = [],
): readonly RecalledPiece[] {
  return pieces.flatMap((piece): RecalledPiece[] => {
    // What was not made at all can be left out.
    const found = isUnmade(piece) && piece.lot === '' ? undefined : recallFinding(tracesOf(piece), request, known);
    return found ? [{ piece, ...found }] : [];
  });
}
