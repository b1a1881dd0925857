import { readCopySource } from '../../../src/sheets/copy/copySource';
import type { CopyWishes } from '../../../src/sheets/copy/copyWishes';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { quoteSources, writeQuote } from '../../../src/sheets/quote/writeQuote';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { openSample } from '../quote/openSample';
import { compareAll, isSame } from './otherEngine';

jest.setTimeout(60_000);

const WISHES: CopyWishes = {
  sheets: [],
  kind: 'formulas',
  withCosts: true,
  withParts: true,
  target: 'file',
  today: '2026-11-29',
};

async function withQuote<T>(work: (book: Awaited<ReturnType<typeof openSample>>, quote: string) => Promise<T>): Promise<T> {
  const book = await openSample();
  try {
    await book.port.select({ sheet: 'Jobs', address: 'A10' });
    const { margins, format } = await quoteSources(book.port);
    const { settings } = readQuoteSettings(
      { ...FRESH_QUOTE, margin: '40 %', breaks: '1, 10, 50' },
      margins?.classes ?? [],
      format,
    );
    const { sheet } = await writeQuote(book.port, settings!, margins, '2026-10-05');
    await book.calculate();
    return await work(book, sheet);
  } finally {
    book.dispose();
  }
}

test('a quote as plain formulas calculates elsewhere to the same prices', () =>
  withQuote(async (book, quote) => {
    const source = await readCopySource(book.port);
    const { copy, kept } = planCopy(source, { ...WISHES, sheets: source.names });
    const compared = compareAll(copy);
    const ofQuote = compared.filter(({ at }) => at.startsWith(`${quote} `));
    expect(ofQuote.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
    expect(ofQuote.length).toBeGreaterThan(50);
    expect(kept.filter(({ sheet }) => sheet === quote)).toEqual([]);
  }));

test('a quote for the customer has its prices and words, and neither costs nor the margin', () =>
  withQuote(async (book, quote) => {
    const source = await readCopySource(book.port);
    const { copy } = planCopy(source, { ...WISHES, sheets: [quote], kind: 'values', withCosts: false, withParts: false });
    const before = await book.content(quote);
    const head = before.values.findIndex(row => row.includes('Price each'));
    const sheet = copy.sheets.find(({ name }) => name === quote)!;
    const column = (heading: string) => before.values[head]!.indexOf(heading);
    const shown = (heading: string) => sheet.cells.slice(head + 1, head + 4).map(line => line[column(heading)]!.value);
    const was = (heading: string) => before.values.slice(head + 1, head + 4).map(row => row[column(heading)]);
    for (const heading of ['Hose', 'Quantity', 'Price each', 'Line total']) expect(shown(heading)).toEqual(was(heading));
    expect(before.values[head]!.filter(heading => /cost|labour|margin/i.test(String(heading)))).toEqual([]);
    // Cost and margin stand on the quote's own sheet of costs; that one is copied without them, too.
    const inHouse = source.names.find(name => name.startsWith(quote) && /costs$/.test(name))!;
    const stays = await book.content(inHouse);
    const top = stays.values.findIndex(row => row.includes('Labour, each'));
    const isCost = (heading: unknown) => /cost|labour|, each/i.test(String(heading));
    const costs = stays.values
      .slice(top + 1, top + 4)
      .flatMap(row => row.filter((cell, index) => isCost(stays.values[top]![index]) && typeof cell === 'number' && cell > 0));
    expect(costs.length).toBeGreaterThan(6);
    const both = planCopy(source, {
      ...{ ...WISHES, kind: 'values', withCosts: false, withParts: false },
      sheets: [quote, inHouse],
    } as CopyWishes).copy;
    // 40 % stands nowhere, and no cell holds the cost of a line.
    for (const { cells } of [sheet, ...both.sheets]) {
      const values = new Set(cells.flat().map(({ value }) => value));
      expect(values.has(0.4)).toBe(false);
      expect(costs.filter(cost => values.has(cost))).toEqual([]);
    }
  }));

test('one formula for a whole column becomes a formula a row; a value taken out of a result is taken out', async () => {
  const f = (formula: string, value: FakeCell): FakeCell => ({ formula, value: value as never });
  const rows: FakeCell[][] = [
    [1000, 40, 50, f('=HOSE.CUTLENGTH(A1:A3,B1:B3,Jobs!C$1,E1)', 912), 2],
    [800, 30, '', 722],
    ['1 1/2', 0.25, '', { error: '#VALUE!' }],
    [
      f('=INDEX(HOSE.LENGTHLIMITS(A1,12.7,"mm"),1,2)', 1012),
      f('=IFERROR(HOSE.CUTLENGTH(A2-100,B2,C1)*2,"none")', 1240),
      f('=INDEX(HOSE.CRIMPCAUSE(A1:A3,B1:B3,1),1,1)', 'Combination'),
    ],
  ];
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A1' });
  const { copy, kept } = planCopy(await readCopySource(workbook), { ...WISHES, sheets: ['Jobs'], target: 'sheets' });
  const sheet = copy.sheets[1]!;
  expect(sheet.name).toBe('Jobs copy');
  expect(sheet.cells.slice(0, 3).map(line => line[3]!.formula?.slice(0, 12))).toEqual([
    '=IF(A1="",""',
    '=IF(A2="",""',
    '=IF(A3="",""',
  ]);
  expect(sheet.cells[0]![3]!.formula).toContain("'Jobs copy'!C$1");
  // Text that our functions read as a number is a number in the copy.
  expect(sheet.cells[2]![0]!.value).toBe(1.5);
  const compared = compareAll(copy);
  expect(compared).toHaveLength(5);
  expect(compared.filter(({ ours, theirs }) => !isSame(ours, theirs))).toEqual([]);
  expect(kept.map(({ address, reason }) => `${address} ${reason}`)).toEqual([
    'C4 CRIMPCAUSE: functions that every program has cannot express it',
  ]);
});
