import type { Piece } from '../pieces/piece';
import { recallPieces, type RecalledPiece } from './recallPieces';
import type { KnownGauge, RecallRequest } from './recallRequest';
import { recallRecords, type RecordRow } from './recordRows';
import { countedText } from '../../core/countedText';

/** Everything that belongs to what is asked back. */
export interface Recall {
  readonly request: RecallRequest;
  readonly hits: readonly RecalledPiece[];
  /** Pieces that cannot be excluded: their rows do not say. */
  readonly open: readonly RecalledPiece[];
  /** Orders of the hits; those that only have pieces that cannot be excluded come in `openOrders`. */
  readonly orders: readonly string[];
  readonly openOrders: readonly string[];
  readonly records: readonly RecordRow[];
}

const ordersOf = (pieces: readonly RecalledPiece[]) => [...new Set(pieces.map(({ piece }) => piece.order).filter(Boolean))];

/** Finds pieces, orders and records of a lot, a gauge or a span of days. */
export function recall(
  pieces: readonly Piece[],
  records: readonly RecordRow[],
  request: RecallRequest,
  known: readonly KnownGauge[] = [],
): Recall {
  const found = recallPieces(pieces, request, known);
  const hits = found.filter(({ kind }) => kind === 'hit');
  const open = found.filter(({ kind }) => kind === 'open');
  const ofRecords = recallRecords(records, found, request);
  const orders = [...new Set([...ordersOf(hits), ...ofRecords.map(({ order }) => order).filter(Boolean)])];
  return { request, hits, open, orders, openOrders: ordersOf(open).filter(order => !orders.includes(order)), records: ofRecords };
}

/** The overall result in a sentence. */
export function recallSentence({ hits, open, orders, records }: Recall): string {
  const cannot = open.length === 0 ? '' : ` ${countedText(open.length, 'piece')} cannot be excluded.`;
  return `${countedText(hits.length, 'piece')} of ${countedText(orders.length, 'order')}, ${countedText(records.length, 'row')} of records.${cannot}`;
}
