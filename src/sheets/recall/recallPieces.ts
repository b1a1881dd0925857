import { pieceKey, type Piece } from '../pieces/piece';
import { quotedText } from '../../core/quotedText';
import { isCrimpedEnd, statusOfPiece } from '../pieces/pieceStatus';
import { lotInCell } from './lotInCell';
import type { KnownGauge, RecallRequest } from './recallRequest';

/** How a piece belongs to what is asked back. `open`: it cannot be excluded. */
export interface RecalledPiece {
  readonly piece: Piece;
  readonly kind: 'hit' | 'open';
  readonly why: string;
}

type Finding = Omit<RecalledPiece, 'piece'> | undefined;

const hit = (why: string): Finding => ({ kind: 'hit', why });
const open = (why: string): Finding => ({ kind: 'open', why });

interface LotCell {
  readonly of: 'hose' | 'fitting' | 'ferrule';
  readonly label: string;
  readonly part: string;
  readonly lot: string;
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

function byLot(piece: Piece, request: Extract<RecallRequest, { by: 'lot' }>): Finding {
  // Who names a part may have misspelt it: a lot that stands there counts in any case.
  const cells = lotCells(piece).filter(({ of }) => request.of === 'any' || of === request.of);
  const said = cells.map(cell => ({ ...cell, says: lotInCell(cell.lot, request.lot) }));
  const named = said.find(({ says }) => says === 'named');
  if (named) return hit(`${named.label} ${named.lot}`);
  const mentioned = said.filter(({ says }) => says === 'mentioned');
  if (mentioned.length > 0) return open(mentioned.map(({ label, lot }) => `${label} ${quotedText(lot)}`).join(', '));
  const part = pieceKey(request.part);
  const isOfPart = (cell: LotCell) => part === '' || cell.of === 'ferrule' || pieceKey(cell.part) === part;
  const blank = said.filter(cell => cell.says === 'none' && isOfPart(cell));
  return blank.length > 0 ? open(`no ${blank.map(({ label }) => label).join(', no ')}`) : undefined;
}

const isMeasured = ({ ends, finished }: Piece) =>
  finished !== undefined || ends.some(({ readings }) => readings.some(reading => reading !== undefined));

function byGauge(piece: Piece, request: Extract<RecallRequest, { by: 'gauge' }>, known: readonly KnownGauge[]): Finding {
  const { since } = request;
  if (since !== undefined && piece.date !== undefined && piece.date < since) return undefined;
  const undated = since !== undefined && piece.date === undefined;
  const wanted = pieceKey(request.name);
  const names = [...piece.gauges, ...piece.ends.map(({ die }) => die).filter(Boolean)];
  if (names.some(name => pieceKey(name) === wanted)) {
    return undated ? open(`${request.name}, but no date`) : hit(undated ? '' : request.name);
  }
  if (request.kind === 'die') {
    const blank = piece.ends.some(end => isCrimpedEnd(end) && end.die === '');
    return blank ? open('no die') : undefined;
  }
  const kindOf = (name: string) => known.find(each => pieceKey(each.name) === pieceKey(name))?.kind;
  // Measured with another one of the same kind.
  if (piece.gauges.some(name => kindOf(name) !== undefined && kindOf(name) === request.kind)) return undefined;
  const isUsed =
    request.kind === 'pressure gauge' ? piece.testedAt !== undefined : isMeasured(piece) || piece.testedAt !== undefined;
  if (!isUsed) return undefined;
  const strange = piece.gauges.filter(name => kindOf(name) === undefined);
  return open(strange.length > 0 ? `${strange.join(', ')}: not on sheet Gauges` : `no ${request.kind || 'gauge'} named`);
}

function byDays(piece: Piece, { from, to }: Extract<RecallRequest, { by: 'days' }>): Finding {
  if (piece.date !== undefined) return piece.date >= from && piece.date < to + 1 ? hit('made then') : undefined;
  const status = statusOfPiece(piece);
  // What was never cut was not made on any day.
  return status === '' || status === 'planned' ? undefined : open('no date');
}

/** Whether a piece that was not made at all can be left out. */
const isUnmade = (piece: Piece) => ['', 'planned'].includes(statusOfPiece(piece)) && piece.lot === '';

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
    if (isUnmade(piece)) return [];
    const found =
      request.by === 'lot'
        ? byLot(piece, request)
        : request.by === 'gauge'
          ? byGauge(piece, request, known)
          : byDays(piece, request);
    return found ? [{ piece, ...found }] : [];
  });
}
