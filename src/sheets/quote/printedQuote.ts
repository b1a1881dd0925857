import type { CellValue, RangeContent } from '../../workbook/workbook';
import { PLAIN_MONEY } from '../catalogue/currencyFormat';
import { PRINTED, type QuoteColumn } from './quoteLayout';
import type { ReadQuote } from './readQuote';

/** Columns of a quote that a customer may see: no cost, no margin. */
export const CUSTOMER_COLUMNS = [...PRINTED, 'note'] as const satisfies readonly QuoteColumn[];
export type CustomerColumn = (typeof CUSTOMER_COLUMNS)[number];

/** One line of a quote as it is shown; "" where its column is not there. */
export type PrintedLine = Readonly<Record<CustomerColumn, CellValue>>;

/** What a quote shows to a customer at this moment. */
export interface PrintedQuote {
  readonly customer: string;
  readonly reference: string;
  readonly validUntil: number | undefined;
  readonly lines: readonly PrintedLine[];
  /** `Each at 10`, with its price in each line. */
  readonly breaks: readonly { readonly heading: string; readonly prices: readonly CellValue[] }[];
  /** Sum, minimum charge, call-out, total: those that are there. */
  readonly totals: readonly { readonly label: string; readonly amount: number }[];
  /** Which lines are not quoted, as a sentence; "" where there is none. */
  readonly notQuoted: string;
  readonly headings: Readonly<Partial<Record<CustomerColumn, string>>>;
  /** Number format of its prices. */
  readonly format: string;
  /** Number format of its overall lengths. */
  readonly lengthFormat: string;
}

const NOT_QUOTED = /^Not in this quote\b/;

/** Above the lines where it is one row, below the totals where it is more; it ends at a blank row. */
function notQuotedOf({ values }: RangeContent): string {
  const first = values.findIndex(([cell]) => typeof cell === 'string' && NOT_QUOTED.test(cell));
  if (first < 0) return '';
  const lines = values.slice(first).map(([cell]) => (typeof cell === 'string' ? cell.trim() : ''));
  const end = lines.indexOf('');
  return lines.slice(0, end < 0 ? lines.length : end).join(' ');
}
const EACH_AT = /^Each at /;

const textOf = (value: CellValue): string => (typeof value === 'string' || typeof value === 'number' ? String(value) : '');

function totalsOf({ values }: RangeContent, last: number, amounts: number): PrintedQuote['totals'] {
  return values.slice(last + 1).flatMap(row => {
    const amount = row[amounts];
    const label = row.slice(0, amounts).find(cell => typeof cell === 'string' && cell !== '');
    return typeof amount === 'number' && typeof label === 'string' ? [{ label, amount }] : [];
  });
}

/** What a quote that was read shows to a customer, from the content of its sheet. */
export function printedQuote(content: RangeContent, quote: ReadQuote): PrintedQuote {
  const { values, formats } = content;
  const [first, last] = [quote.rows[0]!, quote.rows.at(-1)!];
  const head = values[first - 1]!;
  const shown = CUSTOMER_COLUMNS.filter(column => quote.has(column));
  const lines = quote.rows.map(
    row =>
      Object.fromEntries(
        CUSTOMER_COLUMNS.map(column => [column, quote.has(column) ? quote.value(column, row) : '']),
      ) as unknown as PrintedLine,
  );
  const columnsAt = (heading: string) => head.indexOf(heading);
  const reference = values.find(row => row[0] === 'Reference')?.[2] ?? '';
  return {
    customer: quote.customer,
    reference: textOf(reference),
    validUntil: quote.validUntil,
    lines,
    breaks: head.flatMap((heading, column) =>
      typeof heading === 'string' && EACH_AT.test(heading)
        ? [{ heading, prices: quote.rows.map(row => values[row]![column]!) }]
        : [],
    ),
    totals: totalsOf(content, last, columnsAt('Line total')),
    notQuoted: notQuotedOf(content),
    headings: Object.fromEntries(shown.map(column => [column, quote.heading(column)])),
    format: formats[first]?.[columnsAt('Price each')] ?? PLAIN_MONEY,
    lengthFormat: (quote.has('overall') && formats[first]?.[columnsAt(quote.heading('overall'))]) || 'General',
  };
}
