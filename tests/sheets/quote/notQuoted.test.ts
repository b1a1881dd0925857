import { notQuotedLines } from '../../../src/sheets/quote/quoteHead';
import { printedQuote } from '../../../src/sheets/quote/printedQuote';
import type { ReadQuote } from '../../../src/sheets/quote/readQuote';
import { sheetContent } from '../table/sheetContent';

const many = Array.from({ length: 30 }, (_, at) => `line No. ${at}.`);

test('a long list of lines that are not quoted stays within the page', () => {
  const lines = notQuotedLines(many);
  expect(lines.length).toBeGreaterThan(2);
  expect(Math.max(...lines.map(line => line.length))).toBeLessThanOrEqual(140);
  expect(notQuotedLines(['line 3'])).toEqual(['Not in this quote, to be clarified first: line 3.']);
  expect(notQuotedLines([])).toEqual([]);
});

test('the paper has the whole of it again, from below the totals', () => {
  const quote = { rows: [1], has: () => false, value: () => '', heading: () => '' } as unknown as ReadQuote;
  const below = notQuotedLines(many).map(line => [line]);
  const content = sheetContent([['Hose'], ['Alder DN 12'], [''], ...below, [''], ['The rating of the weakest part.']]);
  expect(printedQuote(content, quote).notQuoted).toBe(`Not in this quote, to be clarified first: ${many.join(', ')}.`);
});
