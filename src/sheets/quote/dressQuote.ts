import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { columnWidth } from './columnWidth';
import { HEADING_ROW, QuoteLayout, type QuoteColumn } from './quoteLayout';
import { COSTS_LEAD } from './quoteWords';
import type { QuoteInput } from './quoteInput';

const NUMBER_WIDTH = 62;
const WIDTHS: Readonly<Partial<Record<QuoteColumn, number>>> = {
  line: 36,
  label: 120,
  hose: 92,
  fittingA: 178,
  fittingB: 178,
  guard: 100,
  fluid: 90,
  rating: 130,
  note: 215,
  check: 170,
  missing: 170,
};
const WIDEST = 240;
/** Of the labels of the settings, the line numbers below them, hose and price. */
const LEAD_WIDTHS = [170, 110, NUMBER_WIDTH];
/** Three lines: `Overall`, `length`, `(mm)`. */
export const HEADING_HEIGHT = 46;
const PARTS = ['hose', 'fittingA', 'fittingB', 'guard'] as const;

function dressHeadings(writer: SheetWriter, lines: number, columns: number): void {
  // Kept with the file, where heights that a host fits by itself are not.
  writer.style(HEADING_ROW, 0, 1, columns, { rowHeight: HEADING_HEIGHT, bold: true, fill: HEAD_FILL, wrap: true });
  writer.style(HEADING_ROW, 0, lines + 1, columns, { border: 'all' });
}

export function dressQuote(writer: SheetWriter, { settings, lines, lengthFormat }: QuoteInput, layout: QuoteLayout): void {
  const { firstRow } = layout;
  if (lengthFormat) writer.format(firstRow, layout.column('overall'), lines.length, 1, lengthFormat);
  writer.format(firstRow, layout.column('each'), lines.length, 2 + layout.breaks, settings.format);
  const columns = layout.column('note') + 1;
  dressHeadings(writer, lines.length, columns);
  for (const column of (['label', 'fittingA', 'fittingB', 'fluid', 'rating', 'note'] as const).filter(each => layout.has(each))) {
    writer.style(firstRow, layout.column(column), lines.length, 1, { wrap: true });
  }
  const parts = PARTS.map(part => {
    const names = lines.map(line => line[part]);
    return [part, columnWidth(names, WIDTHS[part]!, WIDEST)] as const;
  });
  const named = Object.entries({ ...WIDTHS, ...Object.fromEntries(parts) }) as [QuoteColumn, number][];
  const own = named.filter(([name]) => layout.has(name) && layout.sideOf(name) === 'quote');
  const widths = new Map(own.map(([name, width]) => [layout.column(name), width]));
  writer.widths(...Array.from({ length: columns }, (_, at) => widths.get(at) ?? NUMBER_WIDTH));
}

export function dressCosts(writer: SheetWriter, { settings, lines }: QuoteInput, layout: QuoteLayout): void {
  const { firstRow } = layout;
  const money = (column: number, columns = 1) => writer.format(firstRow, column, lines.length, columns, settings.format);
  money(COSTS_LEAD.length - 1);
  money(layout.column('hoseCost'), layout.column('cost') - layout.column('hoseCost') + 1);
  money(layout.column('exact'));
  if (layout.breaks > 0) money(layout.breakLabourColumn(0), layout.breaks);
  writer.format(firstRow, layout.column('earned'), lines.length, 1, '0.0 %');
  dressHeadings(writer, lines.length, layout.lastWorking + 1);
  const widths = new Map((['check', 'missing'] as const).map(name => [layout.column(name), WIDTHS[name]!]));
  writer.widths(...Array.from({ length: layout.lastWorking + 1 }, (_, at) => LEAD_WIDTHS[at] ?? widths.get(at) ?? NUMBER_WIDTH));
}
