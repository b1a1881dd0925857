import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { pageScale } from '../print/pageScale';
import { pageStarts } from '../print/pageStarts';
import { BAND_FILL, HEAD_FILL, STOP_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import type { BenchCard } from '../jobs/benchCard';
import type { CardPageOptions } from './cardPage';
import { BENCH_CAUTIONS } from '../print/cautions';
import { cardParts } from './cardParts';
import { type CardRow, textRows, furtherRows, cardRows } from './cardRows';

const COLUMNS = 11;

/** Columns and rows that the clock picture covers, beside the first steps. */
const CLOCK = { column: 9, columns: 2, rows: 8 } as const;
const ROW_POINTS = 12;
const READING_POINTS = 17;
/** The numbers of the work are larger than all else: seventeen points on paper, as on the printed card. */
const [NUMBER_FONT, NUMBER_POINTS] = [23, 28] as const;
/** Columns of those numbers: end, cut length, insertion, die, dial, crimp diameter. */
const NUMBERS = 7;
const WIDTHS = [44, 106, 62, 58, 66, 58, 58, 64, 72, 58, 58] as const;
const MARGIN = 28;
const SCALE = pageScale(WIDTHS, 'portrait', MARGIN);
/** Points of height that Letter, the shorter paper, has for rows at that scale; a row less, since hosts round heights. */
const PAGE_POINTS = Math.floor(((792 - 2 * MARGIN) / SCALE) * 100) - ROW_POINTS;

const CLOCK_WORDS = 'Clock picture of the two bent ends: the sheet says the same in words under the steps';

const HEIGHTS: Readonly<Partial<Record<CardRow['kind'], number>>> = { readings: READING_POINTS, cells: NUMBER_POINTS };
const heightOf = (rows: readonly CardRow[]) => rows.reduce((sum, { kind }) => sum + (HEIGHTS[kind] ?? ROW_POINTS), 0);

/** Cards page by page: as many as a page holds, at least one, the cautions under the last of each page. */
function pagesOf(cards: readonly (readonly CardRow[])[], cautions: readonly CardRow[]): readonly (readonly CardRow[])[] {
  const pages: CardRow[][] = [];
  for (const card of cards) {
    const page = pages[pages.length - 1];
    if (page && heightOf(page) + heightOf(card) + heightOf(cautions) <= PAGE_POINTS) page.push(...card);
    else pages.push([...card]);
  }
  return pages.map(page => [...page, ...cautions]);
}

function dress(writer: SheetWriter, rows: readonly CardRow[]): void {
  rows.forEach(({ kind, clock }, row) => {
    if (kind === 'title') writer.style(row, 0, 1, COLUMNS, { bold: true, fill: HEAD_FILL, border: 'bottom' });
    if (kind === 'stop') writer.style(row, 0, 1, COLUMNS, { bold: true, fill: STOP_FILL });
    if (kind === 'heading') writer.style(row, 0, 1, COLUMNS, { fill: BAND_FILL, border: 'all' });
    if (kind === 'end') writer.style(row, 0, 1, COLUMNS, { bold: true });
    if (kind === 'cells') {
      writer.style(row, 0, 1, COLUMNS, { border: 'bottom', rowHeight: NUMBER_POINTS });
      writer.style(row, 0, 1, NUMBERS, { bold: true, fontSize: NUMBER_FONT });
    }
    if (kind === 'readings') writer.style(row, 0, 1, COLUMNS, { border: 'all', rowHeight: READING_POINTS });
    if (clock) writer.picture(row, CLOCK.column, CLOCK.rows, CLOCK.columns, clock, CLOCK_WORDS);
  });
}

/** Bench cards as a new worksheet: one card a line, several a page, with print area and page breaks. */
export function cardSheet(sheet: string, cards: readonly BenchCard[], options: CardPageOptions): readonly Change[] {
  const cautions = BENCH_CAUTIONS.flatMap(caution => textRows('text', caution));
  const pages = pagesOf(
    cards.flatMap(card =>
      cardParts(card).map(part => (part.part === 1 ? cardRows(card, part, options) : furtherRows(card, part, options))),
    ),
    cautions,
  );
  const rows = pages.flat();
  const breaksBefore = pageStarts(pages);
  const writer = new SheetWriter(sheet)
    .format(0, 0, rows.length, COLUMNS, '@')
    .style(0, 0, rows.length, COLUMNS, { fontSize: 9, rowHeight: ROW_POINTS })
    .values(
      0,
      0,
      rows.map(row => row.cells),
    )
    .widths(...WIDTHS);
  dress(writer, rows);
  const printArea = addressOf({ row: 0, column: 0, rows: Math.max(1, rows.length), columns: COLUMNS });
  return writer.page({ orientation: 'portrait', printArea, breaksBefore, scale: SCALE, margin: MARGIN }).done();
}
