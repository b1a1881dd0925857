import { blockAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { INPUT_FILL } from '../print/sheetFills';
import { RATING_CAUTION } from '../print/cautions';
import { SheetWriter } from '../print/sheetWriter';
import { textLines } from '../print/textLines';
import { decimalsOf } from '../catalogue/currencyFormat';
import { ACROSS, notQuotedLines, writeHead, writeSettings } from './quoteHead';
import { BREAK_ROW, HEADING_ROW, QuoteLayout, type QuoteColumn, type QuoteSheets, type QuoteSide } from './quoteLayout';
import { lineFormulas, type LineContext } from './quoteLineFormulas';
import type { QuoteField, QuoteLine } from '../jobs/quoteLine';
import type { QuoteSettings } from './quoteSettings';
import { COSTS_LEAD, HEADINGS } from './quoteWords';
import { writeTotals } from './quoteTotals';
import { dressQuote, dressCosts } from './dressQuote';
import type { QuoteInput } from './quoteInput';

type Writers = Readonly<Record<QuoteSide, SheetWriter>>;

const SHOWN = [
  'line',
  'label',
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'guard',
  'temperature',
  'fluid',
  'quantity',
] as const satisfies readonly QuoteField[];

function valueOf(line: QuoteLine, field: QuoteField): string | number {
  if (field === 'temperature') return line.temperature?.toNumber() ?? '';
  return field === 'overall' ? line.overall.toNumber() : line[field];
}

/** Follows the job sheet where lines are linked and a formula can; else what was read is held. */
function writeLines(writer: SheetWriter, { lines, settings }: QuoteInput, layout: QuoteLayout): void {
  const isNumbered = lines.some(({ line }) => line !== '');
  for (const field of SHOWN.filter(column => layout.has(column))) {
    const column = layout.column(field);
    const held = (line: QuoteLine, index: number) => (field === 'line' && !isNumbered ? index + 1 : valueOf(line, field));
    const formulas = lines.map(line => (settings.isLinked && line.formulas[field]) || '');
    writer.values(
      layout.firstRow,
      column,
      lines.map((line, index) => [formulas[index] ? '' : held(line, index)]),
    );
    formulas.forEach((formula, index) => formula && writer.formulas(layout.firstRow + index, column, [[formula]]));
  }
}

function writeFormulas(writers: Writers, context: LineContext, lines: readonly QuoteLine[]): void {
  const rows = lines.map((line, index) => lineFormulas(context, line, context.layout.firstRow + index));
  for (const side of ['quote', 'costs'] as const) {
    writeColumns(
      writers[side],
      context.layout,
      rows.map(row => row[side]),
    );
  }
}

function writeColumns(writer: SheetWriter, layout: QuoteLayout, rows: readonly ReadonlyMap<number, string>[]): void {
  for (const column of new Set(rows.flatMap(row => [...row.keys()]))) {
    const formulas = rows.map(row => row.get(column));
    // Where UNITCOST spills, nothing is written: only the cells of plain hoses are.
    if (formulas.every(formula => formula !== undefined)) {
      writer.formulas(
        layout.firstRow,
        column,
        formulas.map(formula => [formula]),
      );
    } else formulas.forEach((formula, index) => formula && writer.formulas(layout.firstRow + index, column, [[formula]]));
  }
}

function writeHeadings(
  { quote: writer, costs }: Writers,
  layout: QuoteLayout,
  { lengthUnit, pressureUnit, temperatureUnit, settings }: QuoteInput,
): void {
  const put = (column: number, heading: string) => writer.values(HEADING_ROW, column, [[heading]]);
  for (const [column, heading] of Object.entries(HEADINGS) as [QuoteColumn, string][]) {
    if (!layout.has(column)) continue;
    (layout.sideOf(column) === 'quote' ? writer : costs).values(HEADING_ROW, layout.column(column), [[heading]]);
  }
  costs.values(HEADING_ROW, 0, [COSTS_LEAD]);
  put(layout.column('overall'), `Overall length (${lengthUnit})`);
  put(layout.column('pressure'), `Working pressure (${pressureUnit})`);
  if (layout.has('temperature')) put(layout.column('temperature'), `Temperature (${temperatureUnit})`);
  if (settings.breaks.length > 0) {
    writer.values(BREAK_ROW, layout.column('lineTotal'), [['Quantities:']]);
    writer.values(BREAK_ROW, layout.breakColumn(0), [settings.breaks]);
    writer.style(BREAK_ROW, layout.breakColumn(0), 1, layout.breaks, { fill: INPUT_FILL, bold: true });
    const headings = (words: string, on: QuoteSide) => [
      settings.breaks.map((_, index) => `="${words}"&${layout.breakQuantity(on, index)}`),
    ];
    writer.formulas(HEADING_ROW, layout.breakColumn(0), headings('Each at ', 'quote'));
    costs.formulas(HEADING_ROW, layout.breakLabourColumn(0), headings('Labour at ', 'costs'));
  }
}

/** A formula may only name sheets that are there already: the new sheets come first. */
function sheetsFirst(changes: readonly Change[]): readonly Change[] {
  const isAdded = (change: Change) => change.kind === 'addSheet';
  return [...changes.filter(isAdded), ...changes.filter(change => !isAdded(change))];
}

/**
 * Two new sheets: the quote with its prices, and its costs, margin and other settings, which stay here; all prices are formulas.
 */
export function quoteSheet(input: QuoteInput): readonly Change[] {
  const { sheets, lines, settings, catalogue, plainHose, deratedHoses, temperatureUnit, ratingDecimals } = input;
  const layout = quoteLayoutOf(sheets, lines, settings);
  const writers: Writers = { quote: new SheetWriter(sheets.quote), costs: new SheetWriter(sheets.costs) };
  const { quote: writer, costs } = writers;
  const context = {
    layout,
    catalogue,
    method: settings.method,
    plainHose,
    deratedHoses,
    temperatureUnit,
    ratingDecimals,
    decimals: decimalsOf(settings.format),
  };
  writeHead(writer, input, layout);
  writeSettings(costs, input, layout);
  writeHeadings(writers, layout, input);
  writeLines(writer, input, layout);
  writeFormulas(writers, context, lines);
  const notQuoted = notQuotedLines(input.notQuoted);
  const below = [...(notQuoted.length > 1 ? [...notQuoted, ''] : []), ...textLines(RATING_CAUTION, ACROSS)];
  const afterTotals = writeTotals(writers, layout, settings) + 2;
  writer.values(
    afterTotals,
    0,
    below.map(line => [line]),
  );
  const lastPrinted = afterTotals + below.length - 1;
  dressQuote(writer, input, layout);
  dressCosts(costs, input, layout);
  writer.page({
    orientation: 'landscape',
    printArea: blockAddress(0, 0, lastPrinted + 1, layout.column('note') + 1),
    titleRows: `${HEADING_ROW + 1}:${HEADING_ROW + 1}`,
    fitWidth: true,
  });
  costs.page({ orientation: 'landscape', titleRows: `${HEADING_ROW + 1}:${HEADING_ROW + 1}`, fitWidth: true });
  return sheetsFirst([...writer.done(), ...costs.done()]);
}

/** Where everything of these lines' quote stands. */
function quoteLayoutOf(sheets: QuoteSheets, lines: readonly QuoteLine[], settings: QuoteSettings): QuoteLayout {
  const without = (['label', 'guard', 'temperature', 'fluid'] as const).filter(field => lines.every(line => !line[field]));
  return new QuoteLayout(sheets, lines.length, settings.breaks.length, without, settings.method);
}
