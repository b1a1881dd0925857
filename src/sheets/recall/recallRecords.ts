import { pieceKey, type Piece } from '../pieces/piece';
import { recallFinding, type Finding } from './recallFinding';
import type { RecalledPiece } from './recallPieces';
import type { KnownGauge, RecallRequest } from './recallRequest';
import type { RecordRow } from './recordRows';

/** A row of records that belongs to what is asked back, or that cannot be excluded. */
export interface RecalledRecord extends Finding {
  readonly record: RecordRow;
}

/** Numbers by which a record may name a piece: its own, or that of its assembly and which piece of it. */
const namesOf = ({ piece, assembly }: RecordRow): readonly string[] =>
  [piece, assembly && `${assembly}-${piece}`, assembly].filter(Boolean).map(pieceKey);

/** The row with the lots that were asked for: where the records have no column for ferrules, no row says from which lot they were. */
function asked(record: RecordRow, request: RecallRequest): RecordRow {
  const lacks = request.by === 'lot' && request.of === 'ferrule' && !record.lots.some(({ of }) => of === 'ferrule');
  return lacks ? { ...record, lots: [...record.lots, { of: 'ferrule', label: 'ferrule lot', part: '', lot: '' }] } : record;
}

/**
 * The records of recalled pieces, those that name the lot, gauge or day themselves, and those that cannot be excluded.
 * @param pieces all that the sheet Pieces knows: where a record does not say, its piece does
 */
export function recallRecords(
  records: readonly RecordRow[],
  pieces: readonly Piece[],
  recalled: readonly RecalledPiece[],
  request: RecallRequest,
  known: readonly KnownGauge[],
): readonly RecalledRecord[] {
  const numbers = new Set(recalled.filter(({ kind }) => kind === 'hit').map(({ piece }) => pieceKey(piece.piece)));
  const all = new Set(pieces.map(({ piece }) => pieceKey(piece)));
  return records.flatMap((record): RecalledRecord[] => {
    const own = recallFinding(asked(record, request), request, known);
    const names = namesOf(record);
    if (own?.kind !== 'hit' && names.some(name => numbers.has(name)))
      return [{ record, kind: 'hit', why: 'of a recalled piece' }];
    if (!own || (own.isSilent && names.some(name => all.has(name)))) return [];
    return [{ record, ...own }];
  });
}
