import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { hoseKey } from '../jobs/cutLine';
import { CUT_CAUTION } from '../print/cautions';
import { pageStarts } from '../print/pageStarts';
import { BAND_FILL, HEAD_FILL, STOP_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { textLines } from '../print/textLines';
import { lengthText } from '../table/lengthText';
import { FONT, HEADING_FONT, ROW } from './cutListColumns';
import { cutsRows, listLayout, printedColumns, type ListLayout } from './cutListLayout';
import { listPages, type ListRow, type RowBlock } from './cutListPages';
import type { CutSettings } from './cutSettings';
import { sharedPrefix, type NumberOf } from './lineCuts';
import type { PlannedReel } from './plannedReel';

/** First cell of a cut list: by it a list is found again. */
export const CUT_LIST_TITLE = 'Cut list';

/** Margins, and the height of Letter, the shorter paper, less a row, in points. */
const MARGIN = 18;
const PAGE = 792 - 2 * MARGIN - ROW;
/** The title is larger; headings take three lines. */
const [TITLE, HEADINGS] = [20, 3 * ROW] as const;
/** Letters that fit across all columns. */
const ACROSS = 118;
/** Width of the column of hoses, beside the print. */
const HOSE_WIDTH = 100;
const TOO_OLD = 'OLDER THAN THE LIMIT: do not use without a check by a qualified person';

/** What is said on a cut list beside its cuts. */
export interface CutListWords {
  /** What the list was made from: `From sheet Jobs (14 lines) and rack Rack, 2026-10-05`. */
  readonly source: string;
  /** What the plan comes to: pieces planned, what waits and why, what is bought, what is left. */
  readonly result: readonly string[];
  /** What else is to be known: rows left out, reels too old. */
  readonly notes: readonly string[];
  /** What is to be known of each hose, by `hoseKey`; it stands behind its name. */
  readonly hoses: ReadonlyMap<string, string>;
}

function rulesText({ unit, kerf, squaring, keep }: CutSettings): string {
  const length = (value: CutSettings['kerf']) => `${lengthText(value, unit)} ${unit}`;
  const square = squaring?.gt(0)
    ? ` Square off ${length(squaring)} of every reel first.`
    : ' Nothing comes off a reel for squaring.';
  const rest = keep ? `an end from ${length(keep)} on goes back to the rack` : 'nothing goes back to the rack';
  return `Cut from left to right, then the next row. Kerf ${length(kerf)}.${square} Rest: ${rest}.`;
}

/** Notes of the lines, each once, with the lines that it is about. */
function lineNotes(reels: readonly PlannedReel[]): readonly string[] {
  const lines = new Map<string, Set<string>>();
  for (const { line } of reels.flatMap(({ cuts }) => cuts)) {
    if (line.note) lines.set(line.note, (lines.get(line.note) ?? new Set()).add(line.line));
  }
  return [...lines].map(([note, names]) => `${names.size === 1 ? 'Line' : 'Lines'} ${[...names].join(', ')}: ${note}.`);
}

/** How a piece is called; lines without a name of their own are called by their rows. */
function pieceSentence(prefix: string | undefined, reels: readonly PlannedReel[]): readonly string[] {
  if (prefix === undefined) return [];
  const areRows = reels.every(({ cuts }) => cuts.every(({ line }) => /^row \d+$/.test(line.line)));
  const [line, name] = areRows && reels.length > 0 ? ['row 7', 'row 7'] : ['line 7', '7'];
  return [`Line and No. are the piece number: No. 2 of ${line} is piece ${prefix}${name}-2.`];
}

const wordRows = (kind: 'hose' | 'warning', text: string): readonly ListRow[] =>
  textLines(text, ACROSS).map(line => ({ kind, cells: [line], height: ROW }));

/** The reels with the names of their hoses; what is too old says so above its cuts. */
function blocksOf(reels: readonly PlannedReel[], layout: ListLayout, hoses: CutListWords['hoses']): readonly RowBlock[] {
  return reels.map((reel, index) => {
    const { hose } = reel.rack;
    const isFirst = index === 0 || hoseKey(reels[index - 1]!.rack.hose) !== hoseKey(hose);
    const said = hoses.get(hoseKey(hose));
    const cuts = cutsRows(layout, { reel, number: index + 1 });
    const rows: readonly ListRow[] = [
      ...(isFirst ? wordRows('hose', said ? `${hose}: ${said}` : hose) : []),
      ...(reel.isTooOld ? wordRows('warning', `Reel ${index + 1} ${TOO_OLD}`) : []),
      // The hose stands behind the print, too, so that a row that was sorted or copied keeps it.
      ...cuts.map(({ cells, height }): ListRow => ({
        kind: 'cuts',
        cells: [...cells, hose],
        height,
        isShaded: index % 2 === 1,
      })),
    ];
    return { hose, isFirst, rows };
  });
}

/** Neighbours that look alike, so that there are few changes. */
function runsOf(rows: readonly ListRow[], look: (row: ListRow) => unknown): readonly { at: number; rows: readonly ListRow[] }[] {
  const runs: { at: number; rows: ListRow[] }[] = [];
  rows.forEach((row, at) => {
    const last = runs.at(-1);
    if (last && look(last.rows[0]!) === look(row)) last.rows.push(row);
    else runs.push({ at, rows: [row] });
  });
  return runs;
}

function dress(writer: SheetWriter, rows: readonly ListRow[], first: number, columns: number): void {
  for (const { at, rows: own } of runsOf(rows, ({ kind }) => kind)) {
    const style = (fill: string) => writer.style(first + at, 0, own.length, columns, { bold: true, fill, border: 'bottom' });
    const { kind } = own[0]!;
    if (kind === 'hose') style(HEAD_FILL);
    else if (kind === 'warning') style(STOP_FILL);
    else writer.style(first + at, 0, own.length, columns, { border: 'all' });
  }
  for (const { at, rows: own } of runsOf(rows, ({ isShaded }) => isShaded === true)) {
    if (own[0]!.isShaded) writer.style(first + at, 0, own.length, columns, { fill: BAND_FILL });
  }
  for (const { at, rows: own } of runsOf(rows, ({ height }) => height)) {
    const { height: rowHeight } = own[0]!;
    if (rowHeight > ROW) writer.style(first + at, 0, own.length, columns, { wrap: true, rowHeight });
  }
}

/**
 * A new sheet with the cuts reel by reel, several side by side: equal cuts of a line are one (`4 × 570`), each with its box to tick. It is
 * printed at full size on A4 and Letter alike; a hose begins with its name, and is named again where a page goes on with it.
 * @param sheet a name that is not taken
 * @param numberOf numbers of the pieces, where they are known
 */
export function cutListSheet(
  sheet: string,
  reels: readonly PlannedReel[],
  settings: CutSettings,
  { source, result, notes, hoses }: CutListWords,
  numberOf: NumberOf = new Map(),
): readonly Change[] {
  const { unit, pagePerHose = false } = settings;
  const prefix = sharedPrefix(reels, numberOf);
  const layout = listLayout({ reels, unit, numberOf, prefix });
  const columns = printedColumns(layout);
  const said = (sentences: readonly string[]) => sentences.flatMap(sentence => textLines(sentence, ACROSS)).map(line => [line]);
  // Each sentence of the result begins in bold, so that none is overlooked.
  const bold = result.map((_, index) => 2 + said(result.slice(0, index)).length);
  const head = [
    [CUT_LIST_TITLE],
    [source],
    ...said(result),
    ...said([rulesText(settings), ...pieceSentence(prefix, reels), ...notes, ...lineNotes(reels), CUT_CAUTION]),
  ];
  const headingRow = head.length;
  const first = headingRow + 1;
  const pages = listPages(blocksOf(reels, layout, hoses), {
    top: TITLE + (head.length - 1) * ROW,
    heading: HEADINGS,
    page: PAGE,
    pagePerHose,
    again: hose => wordRows('hose', `${hose}, continued`)[0]!,
  });
  const rows = pages.flat();
  const writer = new SheetWriter(sheet)
    .style(0, 0, first + rows.length, columns.length + 1, { fontSize: FONT, rowHeight: ROW })
    .style(0, 0, 1, 1, { bold: true, fontSize: 14, rowHeight: TITLE })
    .style(headingRow, 0, 1, 1, { rowHeight: HEADINGS });
  for (const row of bold) writer.style(row, 0, 1, 1, { bold: true });
  columns.forEach(({ format, bold: isBold }, column) => {
    if (format) writer.format(first, column, rows.length, 1, format);
    if (isBold) writer.style(first, column, rows.length, 1, { bold: true });
  });
  writer
    .values(0, 0, head)
    .values(headingRow, 0, [[...columns.map(({ heading }) => heading), 'Hose'], ...rows.map(({ cells }) => cells)])
    .style(headingRow, 0, 1, columns.length + 1, {
      bold: true,
      fontSize: HEADING_FONT,
      fill: HEAD_FILL,
      wrap: true,
      border: 'all',
    })
    .widths(...columns.map(({ width }) => width), HOSE_WIDTH);
  dress(writer, rows, first, columns.length);
  const starts = pageStarts([{ length: first + pages[0]!.length }, ...pages.slice(1)]);
  return writer
    .page({
      orientation: 'portrait',
      printArea: addressOf({ row: 0, column: 0, rows: first + rows.length, columns: columns.length }),
      titleRows: `${headingRow + 1}:${headingRow + 1}`,
      breaksBefore: starts,
      scale: 100,
      margin: MARGIN,
    })
    .done();
}
