import type { Change } from '../../workbook/workbook';
import { newSheetWriting, type Writing } from '../print/writing';
import { SheetWriter } from '../print/sheetWriter';
import { GAUGES_SHEET } from './readGauges';
import { DATE_FORMAT } from '../print/dateFormat';

const HEADINGS = ['Gauge', 'Kind', 'Unit', 'Checked', 'Every (days)', 'U', 'Range from', 'Range to', 'Resolution', 'Note'];
const ROWS = 200;

/** The sheet Gauges as it is begun: headings only, the gauges are the workshop's own. */
export function gaugesSheet(): Writing {
  const changes: readonly Change[] = new SheetWriter(GAUGES_SHEET)
    .widths(110, 90, 44, 76, 60, 50, 60, 60, 60, 200)
    .format(1, 0, ROWS, 3, '@')
    .format(1, 3, ROWS, 1, DATE_FORMAT)
    .values(0, 0, [HEADINGS])
    .style(0, 0, 1, HEADINGS.length, { bold: true, border: 'bottom' })
    .page({ orientation: 'landscape', titleRows: '1:1', fitWidth: true })
    .done();
  const message =
    'Sheet Gauges added: one row a gauge. Kind: caliper, pressure gauge or die. U is the expanded uncertainty (k = 2).';
  return newSheetWriting(GAUGES_SHEET, changes, message);
}
