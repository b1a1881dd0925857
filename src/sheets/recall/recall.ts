import type { Piece } from '../pieces/piece';
import { recallPieces, type RecalledPiece } from './recallPieces';
import type { KnownGauge, RecallRequest } from './recallRequest';
import { recallRecords, type RecalledRecord } from './recallRecords';
import type { RecordRow } from './recordRows';
import { countedText } from '../../core/countedText';

/** Everything that belongs to what is asked back. */
export interface Recall {
  readonly request: RecallRequest;
  readonly hits: readonly RecalledPiece[];
  /** Pieces that cannot be excluded: their rows do not say. */
  readonly open: readonly RecalledPiece[];
  /** Orders of the hits; those that only have what cannot be excluded come in `openOrders`. */
  readonly orders: readonly string[];
  readonly openOrders: readonly string[];
  readonly records: readonly RecordRow[];
  /** Rows of records that cannot be excluded. */
  readonly openRecords: readonly RecalledRecord[];
}

const ordersOf = (pieces: readonly RecalledPiece[]) => pieces.map(({ piece }) => piece.order);

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
  const ofRecords = recallRecords(records, pieces, found, request, known);
  const asked = ofRecords.filter(({ kind }) => kind === 'hit').map(({ record }) => record);
  const openRecords = ofRecords.filter(({ kind }) => kind === 'open');
  const named = (orders: readonly string[]) => [...new Set(orders.filter(Boolean))];
  const orders = named([...ordersOf(hits), ...asked.map(({ order }) => order)]);
  const unsure = named([...ordersOf(open), ...openRecords.map(({ record }) => record.order)]);
  return {
    request,
    hits,
    open,
    orders,
    openOrders: unsure.filter(order => !orders.includes(order)),
    records: asked,
    openRecords,
  };
}

/** The overall result in a sentence. */
export function recallSentence({ hits, open, orders, records, openRecords }: Recall): string {
  const unsure = [
    open.length > 0 && countedText(open.length, 'piece'),
    openRecords.length > 0 && `${countedText(openRecords.length, 'row')} of records`,
  ].filter(Boolean);
  const cannot = unsure.length === 0 ? '' : ` ${unsure.join(' and ')} cannot be excluded.`;
  return `${countedText(hits.length, 'piece')} of ${countedText(orders.length, 'order')}, ${countedText(records.length, 'row')} of records.${cannot}`;
}
