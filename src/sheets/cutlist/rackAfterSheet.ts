import type { Change } from '../../workbook/workbook';
import type { RowProblem } from '../table/rowProblem';
import { lengthFormat } from './cutListSheet';
import type { CutSettings } from './cutSettings';
import type { PlannedReel } from './plannedReel';
import type { RackRow } from '../rack/rack';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';

/** What stands in the rack once the reels are cut: whole rows less what was taken, then the ends worth keeping. */
function rackAfter(rack: readonly RackRow[], reels: readonly PlannedReel[]): readonly (RackRow & { readonly note: string })[] {
  const taken = new Map<number, number>();
  for (const reel of reels) taken.set(reel.rack.row, (taken.get(reel.rack.row) ?? 0) + 1);
  const whole = rack
    .map(row => ({
      ...row,
      quantity: row.quantity - (taken.get(row.row) ?? 0),
      note: taken.has(row.row) ? 'others of these were cut' : '',
    }))
    .filter(row => row.quantity > 0);
  const ends = reels.flatMap((reel, index) =>
    reel.isKept ? [{ ...reel.rack, length: reel.left, quantity: 1, note: `end of reel ${index + 1} of the cut list` }] : [],
  );
  return [...whole, ...ends];
}

/**
 * A new sheet with the rack as it is after the cut list; it can be used as the rack of the next plan.
 * @param problems rows of the rack that were not read: they are named, so that nobody takes them for gone
 */
export function rackAfterSheet(
  sheet: string,
  rack: readonly RackRow[],
  reels: readonly PlannedReel[],
  settings: CutSettings,
  problems: readonly RowProblem[],
): readonly Change[] {
  const rows: WrittenCell[][] = rackAfter(rack, reels).map(row => [
    row.hose,
    row.length.toNumber(),
    row.quantity,
    row.place,
    row.lot,
    row.made,
    row.note,
  ]);
  const notRead = problems.map(({ row, sentence }) => [`Row ${row} of the rack was not read and is missing here: ${sentence}`]);
  const headings = ['Hose', `Length (${settings.unit})`, 'Quantity', 'Place', 'Lot', 'Made', 'Note'];
  const writer = new SheetWriter(sheet)
    .format(1, 1, rows.length, 1, lengthFormat(settings))
    .format(1, 3, rows.length, 3, '@')
    .values(0, 0, [headings, ...rows])
    .style(0, 0, 1, headings.length, { bold: true, fill: HEAD_FILL })
    .style(0, 0, rows.length + 1, headings.length, { border: 'all' })
    .widths(120, 80, 60, 90, 90, 80, 220);
  // Beside the table, so that it stays a table.
  if (notRead.length > 0) writer.values(0, headings.length + 1, notRead);
  return writer.page({ orientation: 'portrait', fitWidth: true }).done();
}
