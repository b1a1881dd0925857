import type { Change } from '../../workbook/workbook';
import { LEFT_OUT_WORDS, type LeftOutRow } from '../table/tableRows';
import { lengthFormat } from './cutListSheet';
import type { CutSettings } from './cutSettings';
import type { PlannedReel } from './plannedReel';
import type { RackRow } from '../rack/rackRow';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';

/** Reasons for which hose was left out that may well be in the rack. */
const STILL_THERE: ReadonlySet<string> = new Set(['problem', 'hidden', 'below']);

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
 * @param leftOut rows of the rack that are missing here: they are named, so that nobody takes them for gone
 */
export function rackAfterSheet(
  sheet: string,
  rack: readonly RackRow[],
  reels: readonly PlannedReel[],
  settings: CutSettings,
  leftOut: readonly LeftOutRow[],
): readonly Change[] {
  const hasReels = rack.some(({ reel }) => reel);
  const rows: WrittenCell[][] = rackAfter(rack, reels).map(row => [
    row.hose,
    row.length.toNumber(),
    row.quantity,
    row.place,
    ...(hasReels ? [row.reel ?? ''] : []),
    row.lot,
    row.made,
    row.note,
  ]);
  const notRead = leftOut
    .filter(({ reason }) => STILL_THERE.has(reason))
    .map(({ row, reason, sentence }) => [`Row ${row} of the rack is missing here: ${sentence ?? LEFT_OUT_WORDS[reason]}`]);
  const headings = [
    'Hose',
    `Length (${settings.unit})`,
    'Quantity',
    'Place',
    ...(hasReels ? ['Reel'] : []),
    'Lot',
    'Made',
    'Note',
  ];
  const writer = new SheetWriter(sheet)
    .format(1, 1, rows.length, 1, lengthFormat(settings))
    .format(1, 3, rows.length, hasReels ? 4 : 3, '@')
    .values(0, 0, [headings, ...rows])
    .style(0, 0, 1, headings.length, { bold: true, fill: HEAD_FILL })
    .style(0, 0, rows.length + 1, headings.length, { border: 'all' })
    .widths(120, 80, 60, 90, ...(hasReels ? [70] : []), 90, 80, 220);
  // Beside the table, so that it stays a table.
  if (notRead.length > 0) writer.values(0, headings.length + 1, notRead);
  return writer.page({ orientation: 'portrait', fitWidth: true }).done();
}
