import type { Change } from '../../host/workbook';
import { SheetWriter } from '../sheets/sheetWriter';
import type { Tag } from './tag';

/** Tags as a new worksheet, one row a tag, for label printers that print from a table; the QR code holds the number. */
export function tagSheet(sheet: string, tags: readonly Tag[]): readonly Change[] {
  const rows = tags
    .filter(tag => tag.pressure)
    .map(tag => [tag.number, tag.maker, tag.pressure!, tag.made, tag.length, tag.label, tag.number]);
  const headings = ['Number', 'Maker', 'Maximum working pressure', 'Made', 'Overall length', 'For', 'QR code'];
  return new SheetWriter(sheet)
    .format(1, 0, rows.length, headings.length, '@')
    .values(0, 0, [headings, ...rows])
    .style(0, 0, 1, headings.length, { bold: true, fill: '#E7EDF3', wrap: true })
    .style(0, 0, rows.length + 1, headings.length, { border: 'all' })
    .widths(90, 150, 100, 60, 80, 180, 90)
    .page({ orientation: 'landscape', titleRows: '1:1', fitWidth: true })
    .done();
}
