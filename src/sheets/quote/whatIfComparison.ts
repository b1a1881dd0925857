import { columnLetters } from '../../workbook/a1';
import { HEAD_FILL } from '../print/sheetFills';
import type { SheetWriter } from '../print/sheetWriter';
import { guardShare, priceFormula } from './quoteLineFormulas';
import type { ReadQuote } from './readQuote';

/** What the lines of open quotes are compared by. */
export interface ComparisonInput {
  readonly quotes: readonly ReadQuote[];
  readonly format: string;
}

/** Cell of the handle with the rise. */
const HANDLE = '$C$3';
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
function costAfter(quote: ReadQuote, row: number, guard?: string): string {
  const parts = COST_PARTS.map(part => quote.cell(part, row));
  return `HOSE.UNITCOST(${[HANDLE, ...parts, ...(guard ? [guard] : [])].join(',')})`;
}

function guardAfter(quote: ReadQuote, row: number, hoseAfter: string): string {
  if (!quote.has('guard')) return '0';
  const guard = quote.cell('guard', row);
  return guardShare(costAfter(quote, row, guard), guard, hoseAfter);
}

/** The formulas of one line's comparison, and those of its working. */
function comparison(quote: ReadQuote, row: number, at: number): { shown: string[]; working: string[] } {
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
      `="${quote.sheet.replace(/"/g, '""')}"`,
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
    working: [`=${costAfter(quote, row)}`, `=${guardAfter(quote, row, hose)}`],
  };
}

/** One row a line, its formulas shown and those of its working; gives the last row. */
export function writeComparison(writer: SheetWriter, input: ComparisonInput, head: number): number {
  const { quotes, format } = input;
  const lines = quotes.flatMap(quote => quote.rows.map(row => ({ quote, row })));
  const first = head + 1;
  const formulas = lines.map(({ quote, row }, index) => comparison(quote, row, first + index));
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
      WORKING,
      formulas.map(({ working }) => [working[0]!]),
    )
    .formulas(
      first,
      WORKING + 4,
      formulas.map(({ working }) => [working[1]!]),
    )
    .format(first, 5, lines.length, 3, format)
    .format(first, 8, lines.length, 1, '0.0 %')
    .format(first, 9, lines.length, 3, format)
    .format(first, WORKING, lines.length, 5, format);
  for (const [column, width] of [
    [0, COLUMNS.length],
    [WORKING, 5],
  ] as const) {
    writer.style(head, column, 1, width, { bold: true, fill: HEAD_FILL, wrap: true });
    writer.style(head, column, lines.length + 1, width, { border: 'all' });
  }
  return first + lines.length - 1;
}
