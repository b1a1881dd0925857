import type { Change } from '../../workbook/workbook';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { qrPicture } from './qrPicture';
import type { Tag } from './tag';

/** Side of a QR code and of its cell, in points: modules of 0.7 mm, which phones read. */
const QR_POINTS = 62;

/** Tags as a new worksheet, one row a tag, with its QR code as a picture where the host has them; label printers print from such a table too. */
export function tagSheet(sheet: string, tags: readonly Tag[]): readonly Change[] {
  const rated = tags.filter(tag => tag.pressure);
  const rows = rated.map(tag => [
    ...[tag.number, tag.maker, tag.pressure!, tag.made, tag.useBy ?? '', tag.length, tag.lot ?? '', tag.label, tag.number],
  ]);
  const headings = [
    'Number',
    'Maker',
    'Maximum working pressure',
    'Made',
    'Use by',
    'Overall length',
    'Hose lot',
    'For',
    'QR code',
  ];
  const writer = new SheetWriter(sheet)
    .format(1, 0, rows.length, headings.length, '@')
    .values(0, 0, [headings, ...rows])
    .style(0, 0, 1, headings.length, { bold: true, fill: HEAD_FILL, wrap: true })
    .style(0, 0, rows.length + 1, headings.length, { border: 'all' })
    .style(1, 0, rows.length, headings.length, { rowHeight: QR_POINTS })
    .widths(90, 150, 100, 60, 60, 80, 70, 180, QR_POINTS);
  rated.forEach(({ number }, index) => {
    writer.picture(index + 1, headings.length - 1, 1, 1, qrPicture(number), `QR code of ${number}`);
  });
  return writer.page({ orientation: 'landscape', titleRows: '1:1', fitWidth: true }).done();
}
