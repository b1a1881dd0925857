import type { Decimal } from '../../core/units/decimal';
import type { Change } from '../../workbook/workbook';
import { lengthText } from '../table/lengthText';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import { BENCH_CAUTIONS } from '../print/cautions';
import type { OrderOfWork } from './orderOfWork';
import { firstDue, type PickItem, type PickList } from './pickList';
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

/** A column of the pick list. */
interface PickColumn {
  readonly heading: string;
  readonly width: number;
  readonly format?: string;
  readonly wrap?: boolean;
  readonly cell: (item: PickItem) => WrittenCell;
}

/** `1 (4, due 2026-10-09), 2 (2)` */
function linesText({ lines, length }: PickItem, text: (length: Decimal) => string): string {
  return lines
    .map(
      ({ line, amount, due }) =>
        `${line} (${[length ? text(amount) : `${amount}`, due && `due ${due}`].filter(Boolean).join(', ')})`,
    )
    .join(', ');
}

function pickColumns({ items, unit }: PickList): readonly PickColumn[] {
  const text = (length: Decimal) => lengthText(length, unit);
  const due: PickColumn = { heading: 'First due', width: 70, format: '@', wrap: true, cell: firstDue };
  return [
    { heading: '☐', width: 24, cell: () => '☐' },
    { heading: 'Kind', width: 60, format: '@', cell: ({ kind }) => kind },
    { heading: 'Part', width: 150, format: '@', wrap: true, cell: ({ part }) => part },
    { heading: 'How many', width: 60, cell: ({ count }) => count ?? '' },
    { heading: 'Length', width: 80, format: '@', cell: ({ length }) => (length ? `${text(length)} ${unit}` : '') },
    ...(items.some(item => firstDue(item) !== '') ? [due] : []),
    { heading: 'For lines', width: 180, format: '@', wrap: true, cell: item => linesText(item, text) },
    {
      heading: 'From',
      width: 210,
      format: '@',
      wrap: true,
      cell: ({ reels }) => reels.map(reel => reelText(reel, unit, text)).join('\n'),
    },
  ];
}

/** The pick list as a new sheet, a box to tick in front of each thing. */
export function pickSheet(sheet: string, list: PickList, source: string): readonly Change[] {
  const { items, lineCount, problems } = list;
  const columns = pickColumns(list);
  const rows = items.map(item => columns.map(({ cell }) => cell(item)));
  const first = HEADING_ROW + 1;
  const writer = new SheetWriter(sheet)
    .widths(...columns.map(({ width }) => width))
    .values(0, 0, [
      ['Pick list'],
      [`For ${lineCount} ${lineCount === 1 ? 'line' : 'lines'}. Hose without kerf and squaring.`],
      [source],
    ])
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 });
  columns.forEach(({ format, wrap }, column) => {
    if (format) writer.format(first, column, rows.length, 1, format);
    if (wrap) writer.style(first, column, rows.length, 1, { wrap });
  });
  return writer
    .values(HEADING_ROW, 0, [columns.map(({ heading }) => heading), ...rows])
    .style(HEADING_ROW, 0, 1, columns.length, { bold: true, border: 'bottom' })
    .values(
      first + 1 + rows.length,
      0,
      problems.map(problem => [problem]),
    )
    .page({ orientation: 'portrait', titleRows: `${first}:${first}`, fitWidth: true })
    .done();
}
