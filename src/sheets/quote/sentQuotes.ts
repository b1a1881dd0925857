import * as v from 'valibot';
import type { Workbook } from '../../workbook/workbook';
import { CUSTOMER_COLUMNS, printedQuote, type CustomerColumn, type PrintedQuote } from './printedQuote';
import { moneyText } from '../table/moneyText';
import { quoteOfSheet } from './readQuote';
import { plainValue } from '../../workbook/cellWords';
import { recalled } from '../table/recalled';

const KEY = 'quotes.sent';

/** What is compared of a line: what is made, for how much. */
const COMPARED = CUSTOMER_COLUMNS.filter(column => column !== 'note' && column !== 'rating' && column !== 'lineTotal');
const Cell = v.union([v.string(), v.number(), v.boolean()]);
const Sent = v.object({
  number: v.string(),
  /** Sheet that went to the customer, and the one that it was made from. */
  paper: v.string(),
  quote: v.string(),
  /** As `2026-10-05`. */
  day: v.string(),
  lines: v.array(v.array(Cell)),
});
export type SentQuote = v.InferOutput<typeof Sent>;

/** The quotes that went to customers from this workbook, as it remembers them. */
export const sentQuotes = (workbook: Workbook): Promise<readonly SentQuote[]> => recalled(workbook, KEY, v.array(Sent), []);

const comparedOf = ({ lines }: PrintedQuote) => lines.map(line => COMPARED.map(column => plainValue(line[column])));

/** Remembers with the workbook what was sent; the newest comes last. */
export async function rememberSent(workbook: Workbook, sent: Omit<SentQuote, 'lines'>, quote: PrintedQuote): Promise<void> {
  const before = await sentQuotes(workbook);
  await workbook.remember(KEY, JSON.stringify([...before, { ...sent, lines: comparedOf(quote) }]));
}

/** What has become of a quote since it was sent. */
export interface SinceSent extends SentQuote {
  /** Sentences: what is different now; [] where nothing is. */
  readonly changes: readonly string[];
  /** Lines were copied, so that changes of the job sheet do not reach the quote. */
  readonly isCopied: boolean;
}

const WORDS: Readonly<Partial<Record<CustomerColumn, string>>> = {
  line: 'number',
  label: 'wanted for',
  fittingA: 'fitting A',
  fittingB: 'fitting B',
  overall: 'overall length',
  pressure: 'working pressure',
  each: 'price each',
};
const shown = (value: unknown, column?: CustomerColumn) =>
  value === '' || value === undefined
    ? 'blank'
    : column === 'each' && typeof value === 'number'
      ? moneyText(value)
      : String(value);
const isSame = (before: unknown, now: unknown) =>
  typeof before === 'number' && typeof now === 'number' ? Math.abs(before - now) < 1e-9 : before === now;

/** One sentence a line that is different: `Line 2: quantity 4 → 6, price each 32.1 → 33`. */
function changesOf(before: SentQuote['lines'], now: SentQuote['lines']): readonly string[] {
  if (before.length !== now.length) return [`It had ${before.length} lines, the quote has ${now.length} now.`];
  return before.flatMap((line, index) => {
    const parts = COMPARED.flatMap((column, at) =>
      isSame(line[at], now[index]![at])
        ? []
        : [`${WORDS[column] ?? column} ${shown(line[at], column)} → ${shown(now[index]![at], column)}`],
    );
    return parts.length > 0 ? [`Line ${shown(line[0])}: ${parts.join(', ')}`] : [];
  });
}

async function since(workbook: Workbook, sent: SentQuote): Promise<SinceSent> {
  const read = await quoteOfSheet(workbook, sent.quote);
  if (!read) return { ...sent, isCopied: false, changes: [`Sheet ${sent.quote} cannot be read as a quote any more.`] };
  const { content, quote } = read;
  const columns = content.values[quote.rows[0]! - 1]!;
  const at = columns.indexOf('Hose');
  const isCopied = quote.rows.every(row => content.formulas[row]![at] === '');
  return { ...sent, isCopied, changes: changesOf(sent.lines, comparedOf(printedQuote(content, quote))) };
}

/** The sent quotes whose sheets are both still there, each with what has changed since; the newest first. */
export async function changedSinceSent(workbook: Workbook): Promise<readonly SinceSent[]> {
  const [sent, sheets] = await Promise.all([sentQuotes(workbook), workbook.sheets()]);
  const there = sent.filter(({ paper, quote }) => sheets.includes(paper) && sheets.includes(quote)).reverse();
  const found: SinceSent[] = [];
  for (const one of there) found.push(await since(workbook, one));
  return found;
}
