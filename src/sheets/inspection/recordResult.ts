import { isCrimpedEnd, rejections } from '../pieces/pieceStatus';
import type { Piece } from '../pieces/piece';
import type { InspectionRecord, TestResult } from './inspectionRecord';
import { countedText } from '../../core/countedText';

/** What a record comes to. Only what is in spec throughout can be released. */
export interface RecordResult {
  readonly kind: 'in spec' | 'open' | 'rejected';
  readonly sentence: string;
}

const named = (names: readonly string[]) => [...new Set(names)].join('; ');

/** What a piece still lacks. */
function lacking(piece: Piece): readonly string[] {
  const isOpen = piece.ends.some(end => isCrimpedEnd(end) && end.readings.some(reading => !reading));
  return [
    ...(isOpen ? ['readings'] : []),
    ...(piece.finished ? [] : ['finished length']),
    ...(piece.testedAt ? [] : ['test']),
    ...(piece.flushed && piece.capped ? [] : ['flushed and capped']),
    ...(piece.ownStatus === undefined ? [] : [`status “${piece.ownStatus}”`]),
  ];
}

/** Why it cannot be released, piece by piece. */
function rejected({ crimps, pieces = [] }: InspectionRecord, { leak, slip, twist }: TestResult): readonly string[] {
  const ofCrimps = crimps.flatMap(({ piece, end, verdict }) =>
    verdict && verdict !== 'IN SPEC' ? [`piece ${piece}${end && `, end ${end}`} ${verdict}`] : [],
  );
  const ofPieces = pieces.flatMap(piece =>
    // Crimps are judged above, with U.
    rejections(piece).flatMap(why => (why.startsWith('end ') ? [] : [`piece ${piece.piece} ${why}`])),
  );
  const found = Object.entries({ leak, slip, twist }).flatMap(([what, noted]) => (noted === 'found' ? [`${what} found`] : []));
  return [...ofCrimps, ...ofPieces, ...found];
}

/** The overall result, for the top of a record. */
export function recordResult(record: InspectionRecord, result: TestResult): RecordResult {
  const { crimps, pieces = [] } = record;
  const bad = rejected(record, result);
  if (bad.length > 0) return { kind: 'rejected', sentence: `REJECTED, not to be released: ${named(bad)}.` };
  const open = crimps.filter(({ verdict }) => verdict === undefined).map(({ piece }) => `piece ${piece} readings`);
  const lacks = pieces.flatMap(piece => lacking(piece).map(what => `piece ${piece.piece || `in row ${piece.row}`} ${what}`));
  const missing = named([...open, ...lacks]);
  if (missing !== '') return { kind: 'open', sentence: `NOT COMPLETE: ${missing}.` };
  const all = new Set(crimps.map(({ piece }) => piece)).size;
  return { kind: 'in spec', sentence: `IN SPEC: ${countedText(all, 'piece')}, ${countedText(crimps.length, 'crimp')}.` };
}
