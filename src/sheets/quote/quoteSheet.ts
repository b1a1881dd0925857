import { blockAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL, INPUT_FILL } from '../print/sheetFills';
import { RATING_CAUTION } from '../print/cautions';
import { SheetWriter } from '../print/sheetWriter';
import { textLines } from '../print/textLines';
import { decimalsOf } from '../catalogue/currencyFormat';
import { columnWidth } from './columnWidth';
import { writeHead, writeSettings, type HeadInput } from './quoteHead';
import { BREAK_ROW, fixed, HEADING_ROW, QuoteLayout, type QuoteColumn } from './quoteLayout';
import { lineFormulas, type LineContext } from './quoteLineFormulas';
import type { QuoteField, QuoteLine } from '../jobs/quoteLine';
import type { PlainHoseCost } from './plainHose';
import type { QuoteSettings } from './quoteSettings';
import { HEADINGS } from './quoteWords';
import { writeTotals } from './quoteTotals';

/** Everything a quote sheet is made of. */
export interface QuoteInput extends HeadInput {
  /** A sheet name that is not taken. */
  readonly sheet: string;
  readonly lines: readonly QuoteLine[];
  readonly lengthUnit: string;
  readonly pressureUnit: string;
  /** Number format of overall lengths: to the step of the bench. */
  readonly lengthFormat: string | undefined;
  /** Undefined where the catalogue states no temperatures. */
  readonly temperatureUnit: string | undefined;
  /** The hoses of the table Derating, as a formula names them; undefined where there is no such table. */
  readonly deratedHoses: string | undefined;
  readonly plainHose: PlainHoseCost;
}

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
const NUMBER_WIDTH = 62;
const WIDEST = 240;
/** Letters that fit across the printed columns. */
const ACROSS = 140;
/** Three lines: `Overall`, `length`, `(mm)`. */
const HEADING_HEIGHT = 46;
const PARTS = ['hose', 'fittingA', 'fittingB', 'guard'] as const;

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

function writeFormulas(writer: SheetWriter, context: LineContext, lines: readonly QuoteLine[]): void {
  const { layout } = context;
  const rows = lines.map((line, index) => lineFormulas(context, line, layout.firstRow + index));
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
  writer: SheetWriter,
  layout: QuoteLayout,
  { lengthUnit, pressureUnit, temperatureUnit, settings }: QuoteInput,
): void {
  const put = (column: number, heading: string) => writer.values(HEADING_ROW, column, [[heading]]);
  for (const [column, heading] of Object.entries(HEADINGS) as [QuoteColumn, string][]) {
    if (layout.has(column)) put(layout.column(column), heading);
  }
  put(layout.column('overall'), `Overall length (${lengthUnit})`);
  put(layout.column('pressure'), `Working pressure (${pressureUnit})`);
  if (layout.has('temperature')) put(layout.column('temperature'), `Temperature (${temperatureUnit})`);
  if (settings.breaks.length > 0) {
    writer.values(BREAK_ROW, layout.column('lineTotal'), [['Quantities:']]);
    writer.values(BREAK_ROW, layout.breakColumn(0), [settings.breaks]);
    writer.style(BREAK_ROW, layout.breakColumn(0), 1, layout.breaks, { fill: INPUT_FILL, bold: true });
    const at = (index: number) => fixed(BREAK_ROW, layout.breakColumn(index));
    const headings = (words: string) => [settings.breaks.map((_, index) => `="${words}"&${at(index)}`)];
    writer.formulas(HEADING_ROW, layout.breakColumn(0), headings('Each at '));
    writer.formulas(HEADING_ROW, layout.breakLabourColumn(0), headings('Labour at '));
  }
}

function dress(writer: SheetWriter, { settings, lines, lengthFormat }: QuoteInput, layout: QuoteLayout): void {
  const last = layout.lastColumn;
  const money = (column: number, columns = 1) => writer.format(layout.firstRow, column, lines.length, columns, settings.format);
  if (lengthFormat) writer.format(layout.firstRow, layout.column('overall'), lines.length, 1, lengthFormat);
  money(layout.column('each'), 2 + layout.breaks);
  money(layout.column('hoseCost'), layout.column('exact') - layout.column('hoseCost') + 1);
  if (layout.breaks > 0) money(layout.breakLabourColumn(0), layout.breaks);
  const printed = layout.column('note') + 1;
  const working = layout.column('check');
  for (const [first, columns] of [
    [0, printed],
    [working, last - working + 1],
  ] as const) {
    // Kept with the file, where heights that a host fits by itself are not.
    writer.style(HEADING_ROW, first, 1, columns, { rowHeight: HEADING_HEIGHT, bold: true, fill: HEAD_FILL, wrap: true });
    writer.style(HEADING_ROW, first, lines.length + 1, columns, { border: 'all' });
  }
  for (const column of (['label', 'fittingA', 'fittingB', 'fluid', 'rating', 'note'] as const).filter(each => layout.has(each))) {
    writer.style(layout.firstRow, layout.column(column), lines.length, 1, { wrap: true });
  }
  const parts = PARTS.map(
    part =>
      [
        part,
        columnWidth(
          lines.map(line => line[part]),
          WIDTHS[part]!,
          WIDEST,
        ),
      ] as const,
  );
  const named = Object.entries({ ...WIDTHS, ...Object.fromEntries(parts) }) as [QuoteColumn, number][];
  const widths = new Map(named.filter(([name]) => layout.has(name)).map(([name, width]) => [layout.column(name), width]));
  const gap = layout.column('note') + 1;
  writer.widths(...Array.from({ length: last + 1 }, (_, at) => widths.get(at) ?? (at === gap ? 18 : NUMBER_WIDTH)));
}

/** A new sheet with a quote: printed part on the left, the working with all settings beside it; all prices are formulas. */
export function quoteSheet(input: QuoteInput): readonly Change[] {
  const { sheet, lines, settings, catalogue, plainHose, deratedHoses, temperatureUnit } = input;
  const layout = quoteLayoutOf(lines, settings);
  const writer = new SheetWriter(sheet);
  const context = {
    layout,
    catalogue,
    method: settings.method,
    plainHose,
    deratedHoses,
    temperatureUnit,
    decimals: decimalsOf(settings.format),
  };
  writeHead(writer, input, layout);
  writeSettings(writer, input, layout);
  writeHeadings(writer, layout, input);
  writeLines(writer, input, layout);
  writeFormulas(writer, context, lines);
  const cautions = textLines(RATING_CAUTION, ACROSS).map(line => [line]);
  const afterTotals = writeTotals(writer, layout, settings) + 2;
  writer.values(afterTotals, 0, cautions);
  const lastPrinted = afterTotals + cautions.length - 1;
  dress(writer, input, layout);
  return writer
    .page({
      orientation: 'landscape',
      printArea: blockAddress(0, 0, lastPrinted + 1, layout.column('note') + 1),
      titleRows: `${HEADING_ROW + 1}:${HEADING_ROW + 1}`,
      fitWidth: true,
    })
    .done();
}

/** Where everything of these lines' quote stands. */
function quoteLayoutOf(lines: readonly QuoteLine[], settings: QuoteSettings): QuoteLayout {
  const without = (['label', 'guard', 'temperature', 'fluid'] as const).filter(field => lines.every(line => !line[field]));
  return new QuoteLayout(lines.length, settings.breaks.length, without, settings.method);
}
