import { blockAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { RATING_CAUTION } from '../print/cautions';
import { HEAD_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import { textLines } from '../print/textLines';
import { paperColumns, type PaperColumn, type PaperLine } from './paperColumns';
import type { PaperFields } from './paperFields';
import type { PrintedQuote } from './printedQuote';
import { plainValue } from '../../workbook/cellWords';
import { DATE_FORMAT } from '../print/dateFormat';

/** Everything a quote's paper is made of. */
export interface PaperInput {
  /** A sheet name that is not taken. */
  readonly sheet: string;
  readonly fields: PaperFields;
  readonly quote: PrintedQuote;
  readonly lines: readonly PaperLine[];
  /** Where the tolerances come from: `DIN 20066`; undefined where none is shown. */
  readonly lengthRule: string | undefined;
  /** Day number of the sheet. */
  readonly today: number;
}

/** A paper, and where its columns stand. */
export interface PaperSheet {
  readonly changes: readonly Change[];
  readonly firstRow: number;
  readonly columns: readonly PaperColumn[];
}

/** Letters that fit across the paper. */
const ACROSS = 120;
const PICTURE_HEIGHT = 76;
const HEADING_HEIGHT = 46;

const linesOf = (text: string): readonly string[] =>
  text.split(/\r?\n/).flatMap(line => (line.trim() === '' ? [''] : textLines(line, ACROSS)));
/** Lines of a text, without blank ones at its end. */
const paragraph = (text: string): readonly string[] => (text.trim() === '' ? [] : linesOf(text.trim()));

/** Own name and address, number, customer, dates, lead text, lines that are not quoted; gives the row after them. */
function writeHead(writer: SheetWriter, { fields, quote, today }: PaperInput): number {
  const address = paragraph(fields.ownAddress);
  const own = [fields.ownName.trim(), ...address];
  writer.values(
    0,
    0,
    own.map(line => [line]),
  );
  writer.style(0, 0, 1, 1, { bold: true, fontSize: 16 });
  const title = own.length + 1;
  const facts: (readonly [string, WrittenCell])[] = [
    [`Quote ${fields.number.trim()}`, ''],
    ['Customer', quote.customer],
    ...(quote.reference === '' ? [] : [['Your reference', quote.reference] as const]),
    ['Date', today],
    ...(quote.validUntil === undefined ? [] : [['Valid until', quote.validUntil] as const]),
  ];
  facts.forEach(([label, value], index) => {
    writer.values(title + index, 0, [[label, '', value]]);
    if (label === 'Date' || label === 'Valid until') writer.format(title + index, 2, 1, 1, DATE_FORMAT);
  });
  writer.style(title, 0, facts.length, 1, { bold: true }).style(title, 0, 1, 1, { fontSize: 14 });
  let row = title + facts.length + 1;
  for (const text of [fields.leadText, quote.notQuoted].map(paragraph).filter(lines => lines.length > 0)) {
    writer.values(
      row,
      0,
      text.map(line => [line]),
    );
    row += text.length + 1;
  }
  return row;
}

function writeLines(writer: SheetWriter, { lines, quote }: PaperInput, columns: readonly PaperColumn[], head: number): void {
  const hasDrawings = columns.some(({ id }) => id === 'drawing');
  columns.forEach(({ id, heading, cells, isMoney }, at) => {
    writer.values(head, at, [[heading], ...cells.map(cell => [plainValue(cell)])]);
    if (isMoney) writer.format(head + 1, at, cells.length, 1, quote.format);
    if (id === 'overall') writer.format(head + 1, at, cells.length, 1, quote.lengthFormat);
    if (id !== 'drawing') return;
    lines.forEach(({ drawing }, index) => {
      if (drawing) writer.picture(head + 1 + index, at, 1, 1, drawing, `Line ${index + 1}: assembly with its overall length`);
    });
  });
  writer
    .style(head, 0, 1, columns.length, { rowHeight: HEADING_HEIGHT, bold: true, fill: HEAD_FILL, wrap: true })
    .style(head, 0, lines.length + 1, columns.length, { border: 'all' })
    .style(head + 1, 0, lines.length, columns.length, { wrap: true, ...(hasDrawings && { rowHeight: PICTURE_HEIGHT }) });
}

/** Sum to total under the line totals; gives the row after them. */
function writeTotals(writer: SheetWriter, { quote }: PaperInput, columns: readonly PaperColumn[], first: number): number {
  const amounts = columns.findIndex(({ id }) => id === 'lineTotal');
  const label = Math.max(0, columns.findIndex(({ id }) => id === 'overall') - 1);
  quote.totals.forEach((total, index) => {
    writer.values(first + index, label, [[total.label]]).values(first + index, amounts, [[total.amount]]);
  });
  const last = first + quote.totals.length - 1;
  writer.format(first, amounts, quote.totals.length, 1, quote.format);
  writer.style(last, label, 1, amounts - label + 1, { bold: true, border: 'bottom' });
  return last + 1;
}

/** A new sheet with a quote as it goes to the customer: values only, no cost and no margin anywhere on it. */
export function paperSheet(input: PaperInput): PaperSheet {
  const { sheet, fields, quote, lines, lengthRule } = input;
  const writer = new SheetWriter(sheet);
  const columns = paperColumns(quote, lines, fields.leftOut);
  const head = writeHead(writer, input);
  writeLines(writer, input, columns, head);
  let row = writeTotals(writer, input, columns, head + lines.length + 2) + 1;
  const shows = (id: string) => columns.some(column => column.id === id);
  const below = [
    fields.terms,
    'A line is price × quantity; the total is the sum of the lines. Without tax.',
    lengthRule && shows('tolerance') ? `Tolerance of the overall length: ${lengthRule}.` : '',
    shows('pressure') ? RATING_CAUTION : '',
  ];
  for (const text of below.map(paragraph).filter(each => each.length > 0)) {
    writer.values(
      row,
      0,
      text.map(line => [line]),
    );
    row += text.length;
  }
  writer.widths(...columns.map(({ width }) => width)).page({
    orientation: 'landscape',
    printArea: blockAddress(0, 0, row, columns.length),
    titleRows: `${head + 1}:${head + 1}`,
    fitWidth: true,
  });
  return { changes: writer.done(), firstRow: head + 1, columns };
}
