import type { Change } from '../../workbook/workbook';
import { lengthText } from '../table/lengthText';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import { BENCH_CAUTIONS } from '../print/cautions';
import type { OrderOfWork } from './orderOfWork';
import type { PickList } from './pickList';
import { reelText } from './pickReels';
import { orderSentence } from './weekText';

const ORDER_HEADINGS = ['Step', 'Machine', 'Die', 'Dial', 'Line', 'Label', 'Hose', 'Ends', 'Quantity', 'Due', 'Note'];
const HEADING_ROW = 3;

/** The order of work as a new sheet. */
export function orderSheet(sheet: string, order: OrderOfWork, source: string): readonly Change[] {
  const rows = order.groups.flatMap(({ machine, die, dial, items }, index) =>
    items.map(({ line, ends, oneDial }): WrittenCell[] => [
      index + 1,
      machine,
      die,
      dial?.toNumber() ?? '',
      line.line,
      line.label,
      line.hose,
      ends.join(' + '),
      line.quantity,
      line.due ?? '',
      oneDial ?? '',
    ]),
  );
  const unknown = order.unknown.map(({ line }) => line).join(', ');
  return new SheetWriter(sheet)
    .widths(34, 110, 50, 44, 50, 130, 110, 44, 56, 70, 260)
    .values(0, 0, [['Order of work'], [orderSentence(order)], [source]])
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 })
    .format(HEADING_ROW + 1, 1, rows.length, 2, '@')
    .format(HEADING_ROW + 1, 4, rows.length, 4, '@')
    .values(HEADING_ROW, 0, [ORDER_HEADINGS, ...rows])
    .style(HEADING_ROW, 0, 1, ORDER_HEADINGS.length, { bold: true, border: 'bottom' })
    .format(HEADING_ROW + 1, 9, rows.length, 1, '@')
    .style(HEADING_ROW + 1, 10, rows.length, 1, { wrap: true })
    .values(HEADING_ROW + 2 + rows.length, 0, [...(unknown ? [[`No die known: line ${unknown}`]] : []), [BENCH_CAUTIONS[1]]])
    .page({ orientation: 'landscape', titleRows: `${HEADING_ROW + 1}:${HEADING_ROW + 1}`, fitWidth: true })
    .done();
}

const PICK_HEADINGS = ['☐', 'Kind', 'Part', 'How many', 'Length', 'For lines', 'From'];

/** The pick list as a new sheet, a box to tick in front of each thing. */
export function pickSheet(sheet: string, { items, unit, lineCount, problems }: PickList, source: string): readonly Change[] {
  const text = (length: Parameters<typeof lengthText>[0]) => lengthText(length, unit);
  const rows = items.map(({ kind, part, count, length, lines, reels }): WrittenCell[] => [
    '☐',
    kind,
    part,
    count ?? '',
    length ? `${text(length)} ${unit}` : '',
    lines.map(({ line, amount }) => `${line} (${length ? text(amount) : amount})`).join(', '),
    reels.map(reel => reelText(reel, unit, text)).join('\n'),
  ]);
  return new SheetWriter(sheet)
    .widths(24, 60, 170, 60, 80, 160, 220)
    .values(0, 0, [
      ['Pick list'],
      [`For ${lineCount} ${lineCount === 1 ? 'line' : 'lines'}. Hose without kerf and squaring.`],
      [source],
    ])
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 })
    .format(HEADING_ROW + 1, 1, rows.length, 2, '@')
    .format(HEADING_ROW + 1, 4, rows.length, 3, '@')
    .style(HEADING_ROW + 1, 2, rows.length, 1, { wrap: true })
    .style(HEADING_ROW + 1, 5, rows.length, 2, { wrap: true })
    .values(HEADING_ROW, 0, [PICK_HEADINGS, ...rows])
    .style(HEADING_ROW, 0, 1, PICK_HEADINGS.length, { bold: true, border: 'bottom' })
    .values(
      HEADING_ROW + 2 + rows.length,
      0,
      problems.map(problem => [problem]),
    )
    .page({ orientation: 'portrait', titleRows: `${HEADING_ROW + 1}:${HEADING_ROW + 1}`, fitWidth: true })
    .done();
}
