import { Decimal } from '../../core/units/decimal';
import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { CutSettings } from './cutSettings';
import { placeOf } from '../rack/rackRow';
import { lengthText } from '../table/lengthText';
import type { PlannedCut, PlannedReel } from './plannedReel';
import { CUT_CAUTION } from '../print/cautions';
import { textLines } from '../print/textLines';
import { BAND_FILL, HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';

/** First cell of a cut list: by it a list is found again. */
export const CUT_LIST_TITLE = 'Cut list';

/** Letters that fit across all columns. */
const ACROSS = 150;

/** Format of lengths: millimetres as they come, fractions of an inch. */
export function lengthFormat({ unit }: CutSettings): string {
  return unit === 'mm' ? 'General' : '# ??/??';
}

function headings({ unit }: CutSettings): WrittenCell[] {
  return [
    'Done',
    'Cut',
    'Reel',
    'Hose',
    'Place',
    'Lot',
    `Cut length (${unit})`,
    'Line',
    'Label',
    'Piece',
    `Left on the reel (${unit})`,
    'Note',
  ];
}

function noteOf(reel: PlannedReel, index: number, settings: CutSettings): string {
  const { unit } = settings;
  const first = index === 0 && reel.squaring.gt(0) ? `square off ${lengthText(reel.squaring, unit)} first` : '';
  const old = index === 0 && reel.isTooOld ? 'OLDER THAN THE LIMIT: do not use without a check by a qualified person' : '';
  const last = index === reel.cuts.length - 1 ? (reel.isKept ? 'the rest goes back into the rack' : 'the rest is scrap') : '';
  return [old, first, last && reel.left.gt(0) ? last : '', reel.cuts[index]!.line.note ?? ''].filter(Boolean).join('; ');
}

/** A line's number as a number, any other name as text. */
function lineCell(line: string): WrittenCell {
  return /^[1-9]\d{0,8}$/.test(line) ? Number(line) : line;
}

function rowsOf(reels: readonly PlannedReel[], settings: CutSettings): WrittenCell[][] {
  let cutNumber = 0;
  return reels.flatMap((reel, reelIndex) => {
    let left = reel.rack.length.minus(reel.squaring);
    return reel.cuts.map((cut: PlannedCut, index) => {
      left = Decimal.max(0, left.minus(cut.length).minus(reel.kerf));
      if (index === reel.cuts.length - 1) left = reel.left;
      return [
        '☐',
        ++cutNumber,
        reelIndex + 1,
        reel.rack.hose,
        placeOf(reel.rack),
        reel.rack.lot,
        cut.length.toNumber(),
        lineCell(cut.line.line),
        cut.line.label,
        `${cut.piece} of ${cut.line.ordered ?? cut.line.quantity}`,
        left.toNumber(),
        noteOf(reel, index, settings),
      ];
    });
  });
}

/**
 * A new sheet with one row a cut, in cutting order, reel by reel.
 * @param sheet a name that is not taken
 * @param source what the list was made from, shown on top: `Jobs, 14 lines; 5 October 2026`
 * @param summaries what is to be known of each hose, and what was left out
 */
export function cutListSheet(
  sheet: string,
  reels: readonly PlannedReel[],
  settings: CutSettings,
  source: string,
  summaries: readonly string[],
): readonly Change[] {
  const rows = rowsOf(reels, settings);
  const { unit, kerf, squaring, keep } = settings;
  const columns = headings(settings).length;
  const length = (value: Decimal) => `${lengthText(value, unit)} ${unit}`;
  const rules = [
    `Kerf ${length(kerf)}`,
    squaring && `squaring ${length(squaring)}`,
    keep && `ends from ${length(keep)} are kept`,
  ];
  const head = [
    [CUT_LIST_TITLE],
    [source],
    [`${rules.filter(Boolean).join(', ')}.`],
    ...[...summaries, CUT_CAUTION].flatMap(summary => textLines(summary, ACROSS)).map(line => [line]),
  ];
  const headingRow = head.length + 1;
  const writer = new SheetWriter(sheet)
    .values(0, 0, head)
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 })
    .format(headingRow + 1, 6, rows.length, 1, lengthFormat(settings))
    .format(headingRow + 1, 10, rows.length, 1, lengthFormat(settings))
    .format(headingRow + 1, 9, rows.length, 1, '@')
    .values(headingRow, 0, [headings(settings), ...rows])
    .style(headingRow, 0, 1, columns, { bold: true, fill: HEAD_FILL, wrap: true })
    .style(headingRow, 0, rows.length + 1, columns, { border: 'all' })
    .style(headingRow + 1, 6, rows.length, 1, { bold: true })
    .widths(38, 34, 36, 100, 70, 70, 76, 56, 170, 54, 80, 220);
  let first = headingRow + 1;
  reels.forEach((reel, index) => {
    if (index % 2 === 1) writer.style(first, 0, reel.cuts.length, columns, { fill: BAND_FILL });
    first += reel.cuts.length;
  });
  return writer
    .page({
      orientation: 'landscape',
      printArea: addressOf({ row: 0, column: 0, rows: headingRow + 1 + rows.length, columns }),
      titleRows: `${headingRow + 1}:${headingRow + 1}`,
      fitWidth: true,
    })
    .done();
}
