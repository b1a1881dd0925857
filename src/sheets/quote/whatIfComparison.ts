import { inQuotes } from '../../workbook/inQuotes';
import { columnLetters } from '../../workbook/a1';
import { HEAD_FILL } from '../print/sheetFills';
import type { SheetWriter } from '../print/sheetWriter';
import { isPlainHose, type PlainHoseCost } from './plainHose';
import type { QuoteColumn } from './quoteLayout';
import { guardShare, priceFormula } from './quoteLineFormulas';
import type { ReadQuote } from './readQuote';

/** What the lines of open quotes are compared by. */
export interface ComparisonInput {
  readonly quotes: readonly ReadQuote[];
  /** What hoses without couplings cost by the catalogue of `RAISED_HANDLE`. */
  readonly plainHose: PlainHoseCost;
  readonly format: string;
}

/** Cell of the handle with the rise. */
export const RAISED_HANDLE = '$C$3';
const COLUMNS = [
  'Quote',
  'Line',
  'Wanted for',
  'Hose',
  'Quantity',
  'Price each now',
  'Price each after',
  'Difference each',
  'In per cent',
  'Line now',
  'Line after',
  'Line difference',
] as const;
/** How many columns are printed. */
export const COMPARED = COLUMNS.length;
/** First column of the working, after a gap. */
const WORKING = COLUMNS.length + 1;

/** Finer than any currency: the line total itself is rounded by its quote. */
const DECIMALS = 4;

const COST_PARTS = ['hose', 'fittingA', 'fittingB', 'overall', 'quantity'] as const;

/** UNITCOST of a quote's line by the prices with the rise, without `=`. */
function unitCost(quote: ReadQuote, row: number, guard?: string): string {
  const parts = COST_PARTS.map(part => quote.cell(part, row));
  return `HOSE.UNITCOST(${[RAISED_HANDLE, ...parts, ...(guard ? [guard] : [])].join(',')})`;
}

const named = (quote: ReadQuote, row: number, column: QuoteColumn) => String(quote.value(column, row));

const isPlain = (quote: ReadQuote, row: number) =>
  isPlainHose({ fittingA: named(quote, row, 'fittingA'), fittingB: named(quote, row, 'fittingB') });

function guardAfter({ plainHose }: ComparisonInput, quote: ReadQuote, row: number, hoseAfter: string): string {
  if (!quote.has('guard')) return '0';
  const guard = quote.cell('guard', row);
  if (!isPlain(quote, row)) return guardShare(unitCost(quote, row, guard), guard, hoseAfter);
  const line = { hose: named(quote, row, 'hose'), guard: named(quote, row, 'guard') };
  return line.guard === '' ? '0' : plainHose.guard(line, guard, quote.cell('overall', row));
}

/** Hose, couplings, labour and cost of a line by the prices with the rise; those of an assembly are one formula. */
function costAfter({ plainHose }: ComparisonInput, quote: ReadQuote, row: number, at: number): string[] {
  if (!isPlain(quote, row)) return [`=${unitCost(quote, row)}`];
  const cell = (column: QuoteColumn) => quote.cell(column, row);
  const [hose, labour] = [0, 2].map(index => `$${columnLetters(WORKING + index)}${at + 1}`);
  return [
    `=${plainHose.hose(cell('hose'), cell('overall'))}`,
    '=0',
    `=${plainHose.labour(cell('quantity'))}`,
    `=${hose}+${labour}`,
  ];
}

/** The formulas of one line's comparison, and those of its working. */
function comparison(
  input: ComparisonInput,
  quote: ReadQuote,
  row: number,
  at: number,
): { shown: string[]; cost: string[]; guard: string } {
  const cell = (column: number) => `$${columnLetters(column)}${at + 1}`;
  const [hose, fittings, labour, , guard] = [0, 1, 2, 3, 4].map(index => cell(WORKING + index)) as [
    string,
    string,
    string,
    string,
    string,
  ];
  const after = priceFormula(quote.method, { hose, fittings, labour, guard }, name => quote.setting(name));
  const [quantity, now, then, lineNow, lineAfter] = [4, 5, 6, 9, 10].map(cell) as [string, string, string, string, string];
  const both = (formula: string) => `=IF(COUNT(${now},${then})=2,${formula},"not known")`;
  const label = quote.has('label') ? quote.cell('label', row) : undefined;
  return {
    shown: [
      `=${inQuotes(quote.sheet)}`,
      `=${quote.cell('line', row)}`,
      label ? `=IF(${label}="","",${label})` : '',
      `=${quote.cell('hose', row)}`,
      `=${quote.cell('quantity', row)}`,
      `=${quote.cell('each', row)}`,
      `=${after}`,
      both(`${then}-${now}`),
      both(`${then}/${now}-1`),
      `=${quote.cell('lineTotal', row)}`,
      `=IF(ISNUMBER(${then}),ROUND(${then}*${quantity},${DECIMALS}),"")`,
      both(`${lineAfter}-${lineNow}`),
    ],
    cost: costAfter(input, quote, row, at),
    guard: `=${guardAfter(input, quote, row, hose)}`,
  };
}

/** One row a line, its formulas shown and those of its working; gives the last row. */
export function writeComparison(writer: SheetWriter, input: ComparisonInput, head: number): number {
  const { quotes, format } = input;
  const lines = quotes.flatMap(quote => quote.rows.map(row => ({ quote, row })));
  const first = head + 1;
  const formulas = lines.map(({ quote, row }, index) => comparison(input, quote, row, first + index));
  writer
    .values(head, 0, [COLUMNS])
    .formulas(
      first,
      0,
      formulas.map(({ shown }) => shown),
    )
    .values(head, WORKING, [['Hose after', 'Fittings after', 'Labour after', 'Cost after', 'Guard after']])
    .formulas(
      first,
      WORKING + 4,
      formulas.map(({ guard }) => [guard]),
    )
    .format(first, 5, lines.length, 3, format)
    .format(first, 8, lines.length, 1, '0.0 %')
    .format(first, 9, lines.length, 3, format)
    .format(first, WORKING, lines.length, 5, format);
  // An assembly's cost is one formula over four cells, a plain hose's are four: each row is written for itself.
  formulas.forEach(({ cost }, index) => writer.formulas(first + index, WORKING, [cost]));
  for (const [column, width] of [
    [0, COLUMNS.length],
    [WORKING, 5],
  ] as const) {
    writer.style(head, column, 1, width, { bold: true, fill: HEAD_FILL, wrap: true });
    writer.style(head, column, lines.length + 1, width, { border: 'all' });
  }
  return first + lines.length - 1;
}
