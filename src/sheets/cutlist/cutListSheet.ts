import { Decimal } from '../../core/units/decimal';
import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { hoseKey } from '../jobs/cutLine';
import { numbersText } from '../pieces/cardPieces';
import { fittingScale } from '../print/fittingScale';
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
const ACROSS = 130;

/** Format of lengths: millimetres as they come, fractions of an inch. */
export function lengthFormat({ unit }: CutSettings): string {
  return unit === 'mm' ? 'General' : '# ??/??';
}

/** Shows a cut length behind its quantity: `3 × 1399`. */
function timesFormat(reels: readonly PlannedReel[], { unit }: CutSettings): string {
  if (unit === 'in') return '"× "# ??/??';
  const places = Math.max(0, ...reels.flatMap(({ cuts }) => cuts.map(({ length }) => length.decimalPlaces())));
  return `"× "0${places > 0 ? `.${'0'.repeat(places)}` : ''}`;
}

function headings({ unit }: CutSettings): WrittenCell[] {
  return [
    'Done',
    'Reel',
    'Hose',
    'Place',
    'Lot',
    'Quantity',
    `Cut length (${unit})`,
    'Line',
    'Label',
    'Pieces',
    `Left on the reel (${unit})`,
    'Note',
  ];
}

/** Equal cuts of a reel for one line, one behind the other: `4 × 570`. */
interface CutGroup {
  readonly cuts: readonly PlannedCut[];
  /** Position of its first cut on the reel. */
  readonly first: number;
}

function groupsOf({ cuts }: PlannedReel): readonly CutGroup[] {
  const groups: { cuts: PlannedCut[]; first: number }[] = [];
  cuts.forEach((cut, index) => {
    const last = groups.at(-1);
    const before = last?.cuts[0];
    if (before && before.line === cut.line && before.length.eq(cut.length)) last.cuts.push(cut);
    else groups.push({ cuts: [cut], first: index });
  });
  return groups;
}

function noteOf(reel: PlannedReel, { cuts, first }: CutGroup, settings: CutSettings): string {
  const { unit } = settings;
  const square = first === 0 && reel.squaring.gt(0) ? `square off ${lengthText(reel.squaring, unit)} first` : '';
  const old = first === 0 && reel.isTooOld ? 'OLDER THAN THE LIMIT: do not use without a check by a qualified person' : '';
  const isLast = first + cuts.length === reel.cuts.length;
  const last = isLast ? (reel.isKept ? 'rest back into the rack' : 'rest is scrap') : '';
  return [old, square, last && reel.left.gt(0) ? last : '', cuts[0]!.line.note ?? ''].filter(Boolean).join('; ');
}

/** A line's number as a number, any other name as text. */
function lineCell(line: string): WrittenCell {
  return /^[1-9]\d{0,8}$/.test(line) ? Number(line) : line;
}

/** Numbers of the pieces that the cuts become; before any are known, which ones of their line they are. */
function piecesText(cuts: readonly PlannedCut[], numberOf: NumberOf): string {
  const numbers = cuts.map(cut => numberOf.get(cut));
  if (numbers.every(number => number !== undefined)) return numbersText(numbers);
  const [first, last] = [cuts[0]!, cuts.at(-1)!];
  const which = first === last ? `${first.piece}` : `${first.piece} … ${last.piece}`;
  return `${which} of ${first.line.ordered ?? first.line.quantity}`;
}

/** The number of the piece that a cut becomes. */
export type NumberOf = ReadonlyMap<object, string>;

function rowsOf(reels: readonly PlannedReel[], settings: CutSettings, numberOf: NumberOf): WrittenCell[][] {
  return reels.flatMap((reel, reelIndex) => {
    let left = reel.rack.length.minus(reel.squaring);
    return groupsOf(reel).map(group => {
      const { cuts, first } = group;
      const [{ length, line }] = cuts as [PlannedCut];
      left = Decimal.max(0, left.minus(length.plus(reel.kerf).times(cuts.length)));
      if (first + cuts.length === reel.cuts.length) left = reel.left;
      return [
        '☐',
        reelIndex + 1,
        reel.rack.hose,
        placeOf(reel.rack),
        reel.rack.lot,
        cuts.length,
        length.toNumber(),
        lineCell(line.line),
        line.label,
        piecesText(cuts, numberOf),
        left.toNumber(),
        noteOf(reel, group, settings),
      ];
    });
  });
}

/** Where a new hose begins, as rows of the sheet: a page for each, where it is wanted. */
function hoseStarts(reels: readonly PlannedReel[], firstRow: number): readonly number[] {
  const starts: number[] = [];
  let row = firstRow;
  reels.forEach((reel, index) => {
    if (index > 0 && hoseKey(reels[index - 1]!.rack.hose) !== hoseKey(reel.rack.hose)) starts.push(row);
    row += groupsOf(reel).length;
  });
  return starts;
}

const WIDTHS = [36, 32, 86, 52, 52, 54, 66, 36, 120, 84, 56, 124] as const;
const MARGIN = 28;
/** Font, height of a line and mean width of a letter in the rows, in points: small rows make a long list a short stack of paper. */
const [FONT, ROW, LETTER] = [10, 13, 5.2] as const;
/** Columns whose words may need more than one line. */
const WORDY = [2, 3, 4, 8, 9, 11] as const;

/** Height at which nothing of a row is cut off. */
const heightOf = (cells: readonly WrittenCell[]): number =>
  ROW * Math.max(1, ...WORDY.map(column => Math.ceil((String(cells[column]).length * LETTER) / (WIDTHS[column] - 4))));

/**
 * A new sheet with a row for equal cuts of a line (`4 × 570`), in cutting order, reel by reel.
 * @param sheet a name that is not taken
 * @param source what the list was made from, shown on top: `Jobs, 14 lines; 5 October 2026`
 * @param result what the plan comes to, on top: pieces planned, what waits, what is bought, what is left
 * @param summaries what is to be known of each hose, and what was left out
 * @param numberOf numbers of the pieces, where they are known
 */
export function cutListSheet(
  sheet: string,
  reels: readonly PlannedReel[],
  settings: CutSettings,
  source: string,
  summaries: readonly string[],
  result: readonly string[] = [],
  numberOf: NumberOf = new Map(),
): readonly Change[] {
  const rows = rowsOf(reels, settings, numberOf);
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
    ...result.flatMap(sentence => textLines(sentence, ACROSS)).map(line => [line]),
    [`${rules.filter(Boolean).join(', ')}.`],
    ...[...summaries, CUT_CAUTION].flatMap(summary => textLines(summary, ACROSS)).map(line => [line]),
  ];
  const headingRow = head.length + 1;
  const writer = new SheetWriter(sheet)
    .values(0, 0, head)
    .style(0, 0, 1, 1, { bold: true, fontSize: 14 })
    .style(2, 0, result.length > 0 ? 1 : 0, 1, { bold: true })
    .format(headingRow + 1, 6, rows.length, 1, timesFormat(reels, settings))
    .format(headingRow + 1, 10, rows.length, 1, lengthFormat(settings))
    .format(headingRow + 1, 9, rows.length, 1, '@')
    .values(headingRow, 0, [headings(settings), ...rows])
    .style(headingRow, 0, 1, columns, { bold: true, fill: HEAD_FILL, wrap: true })
    .style(headingRow, 0, rows.length + 1, columns, { border: 'all' })
    .style(headingRow + 1, 0, rows.length, columns, { fontSize: FONT, rowHeight: ROW, wrap: true })
    .style(headingRow + 1, 5, rows.length, 2, { bold: true })
    .widths(...WIDTHS);
  rows.forEach((cells, index) => {
    const rowHeight = heightOf(cells);
    if (rowHeight > ROW) writer.style(headingRow + 1 + index, 0, 1, 1, { rowHeight });
  });
  let first = headingRow + 1;
  reels.forEach((reel, index) => {
    const height = groupsOf(reel).length;
    if (index % 2 === 1) writer.style(first, 0, height, columns, { fill: BAND_FILL });
    first += height;
  });
  const printArea = addressOf({ row: 0, column: 0, rows: headingRow + 1 + rows.length, columns });
  const titleRows = `${headingRow + 1}:${headingRow + 1}`;
  // A host that scales a sheet to the page's width leaves out breaks of its own.
  const size = settings.pagePerHose
    ? { breaksBefore: hoseStarts(reels, headingRow + 2), scale: fittingScale(WIDTHS, 'portrait', MARGIN), margin: MARGIN }
    : { fitWidth: true, margin: MARGIN };
  return writer.page({ orientation: 'portrait', printArea, titleRows, ...size }).done();
}
