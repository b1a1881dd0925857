import type { Change } from '../../workbook/workbook';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';

/** A new sheet for the table of customer classes; the margins are the user's to fill in. */
export function marginSheet(sheet: string, margin: number | undefined): readonly Change[] {
  return new SheetWriter(sheet)
    .values(0, 0, [
      ['Customer class', 'Margin', 'Note'],
      ['Standard', margin ?? '', 'share of the price that is not cost: 0.4 or 40 %'],
    ])
    .format(1, 1, 20, 1, '0.0 %')
    .style(0, 0, 1, 3, { bold: true, fill: HEAD_FILL })
    .widths(130, 70, 260)
    .done();
}
