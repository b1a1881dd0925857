import { READ_PLACES } from '../../core/units/decimalPlaces';
import type { Measure } from '../../cells/sheetCell';
import { isoDate } from '../../core/units/sheetDate';
import type { Change } from '../../workbook/workbook';
import { statusOfPiece } from '../pieces/pieceStatus';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import { recallSentence, type Recall } from './recall';
import type { RecalledPiece } from './recallPieces';
import type { RecallRequest } from './recallRequest';
import type { RecordRow } from './recordRows';
import { changedVerdicts, rejudge } from './rejudge';

/** What is asked back, in words. */
function requestText(request: RecallRequest): string {
  if (request.by === 'lot') return `Lot ${request.lot}${request.part ? ` of ${request.part}` : ''}`;
  if (request.by === 'days') return `Made ${isoDate(request.from)} to ${isoDate(request.to)}`;
  return `${request.kind || 'Gauge'} ${request.name}${request.since === undefined ? '' : ` since ${isoDate(request.since)}`}`;
}

const HEADINGS = ['Piece', 'Order', 'Line', 'Label', 'Hose', 'Lot', 'Lot A', 'Lot B', 'Ferrule lot', 'Date', 'Status', 'Why'];

const rowOf = ({ piece, kind, why }: RecalledPiece): readonly WrittenCell[] => [
  piece.piece,
  piece.order,
  piece.line,
  piece.label,
  piece.hose,
  piece.lot,
  piece.ends[0].lot,
  piece.ends[1].lot,
  piece.ferruleLot,
  piece.date === undefined ? '' : isoDate(piece.date),
  statusOfPiece(piece),
  kind === 'hit' ? why : `cannot be excluded: ${why}`,
];

const recordText = ({ sheet, row, assembly, piece, order }: RecordRow) =>
  `${sheet}, row ${row}: ${[assembly, piece].filter(Boolean).join(' ')}${order ? `, order ${order}` : ''}`;

/** The verdicts that change, as rows of text. */
function verdictRows(found: Recall, error: Measure | undefined): readonly (readonly WrittenCell[])[] {
  if (!error) return [];
  const judged = rejudge(
    [...found.hits, ...found.open].map(({ piece }) => piece),
    error,
  );
  const head = `Judged again: it read ${error.value} ${error.unit.symbol} too high (− = too low)`;
  return [
    [head],
    ['Piece', 'End', 'True mean', 'Was', 'Is'],
    ...changedVerdicts(judged).map(({ piece, end, mean, was, is }) => [
      piece.piece,
      end,
      mean.toDecimalPlaces(READ_PLACES).toNumber(),
      was,
      is,
    ]),
    ...judged.open.map(({ piece, end, why }) => [piece.piece, end, '', 'not judged', why]),
    [],
  ];
}

/**
 * The recall as a new sheet: result on top, pieces, those that cannot be excluded, rows of records.
 * @param error what the caliper read wrong, where that is known
 */
export function recallSheet(sheet: string, found: Recall, source: string, error?: Measure): readonly Change[] {
  const judged = verdictRows(found, error);
  const head = [
    [`Recall: ${requestText(found.request)}`],
    [recallSentence(found)],
    [`Orders: ${found.orders.join(', ') || 'none named'}`],
    ...(found.openOrders.length > 0 ? [[`Orders that cannot be excluded: ${found.openOrders.join(', ')}`]] : []),
    [source],
    [],
  ];
  const top = head.length + judged.length;
  const rows = [...found.hits, ...found.open].map(rowOf);
  const ofRecords = [
    ...found.records.map(record => [recordText(record)]),
    ...found.openRecords.map(({ record, why }) => [`${recordText(record)}: cannot be excluded: ${why}`]),
  ];
  return new SheetWriter(sheet)
    .widths(90, 76, 44, 120, 110, 60, 60, 60, 60, 70, 60, 200)
    .format(0, 0, top, 1, '@')
    .format(top + 1, 0, rows.length, HEADINGS.length, '@')
    .values(0, 0, head)
    .values(head.length, 0, judged)
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 })
    .values(top, 0, [HEADINGS, ...rows])
    .style(top, 0, 1, HEADINGS.length, { bold: true, border: 'bottom' })
    .values(top + rows.length + 2, 0, ofRecords)
    .page({ orientation: 'landscape', titleRows: `${top + 1}:${top + 1}`, fitWidth: true })
    .done();
}
