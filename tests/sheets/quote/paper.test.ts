import { FRESH_PAPER, nextNumber, type PaperFields } from '../../../src/sheets/quote/paperFields';
import { FRESH_QUOTE, type QuoteFieldsText } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { quoteOfSheet, quotesOfWorkbook } from '../../../src/sheets/quote/readQuote';
import { changedSinceSent } from '../../../src/sheets/quote/sentQuotes';
import { writePaper } from '../../../src/sheets/quote/writePaper';
import { quoteSources, writeQuote } from '../../../src/sheets/quote/writeQuote';
import { columnLetters } from '../../../src/workbook/a1';
import { costParts, sampleLines, upToCents } from './independentCosts';
import { openSample } from './openSample';

jest.setTimeout(60_000);

let book: Awaited<ReturnType<typeof openSample>>;
beforeEach(async () => {
  book = await openSample();
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

const TODAY = '2026-10-05';
const FIELDS: PaperFields = {
  ...FRESH_PAPER,
  ownName: 'Beet harvest workshop (invented)',
  ownAddress: '1 Field Road\nSomewhere',
  number: '2026-007',
  terms: 'Delivery within 5 working days.\nPayment within 14 days.',
};

async function quote(fields: Partial<QuoteFieldsText> = {}): Promise<string> {
  const { margins, format } = await quoteSources(book.port);
  const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %', customer: 'Neighbour', ...fields }, [], format);
  const { sheet } = await writeQuote(book.port, settings!, margins, TODAY);
  await book.calculate();
  return sheet;
}

async function paper(fields: Partial<PaperFields> = {}, quoteFields: Partial<QuoteFieldsText> = {}) {
  const from = await quote(quoteFields);
  const sheet = await writePaper(book.port, from, { ...FIELDS, ...fields }, TODAY);
  await book.calculate();
  return { from, sheet, ...(await shown(sheet)) };
}

async function shown(sheet: string) {
  const content = await book.content(sheet);
  const { values } = content;
  const head = values.findIndex(row => row.includes('Price each'));
  const rows = values.slice(head + 1).filter(row => typeof row[0] === 'number');
  const column = (heading: string) => rows.map(row => row[values[head]!.indexOf(heading)]);
  return { content, values, headings: values[head]!.filter(cell => cell !== ''), column, texts: values.map(row => row[0]) };
}

const eachOf = (line: (typeof sampleLines)[number]) => {
  const { hose, fittings, labour } = costParts(line);
  return upToCents((hose + fittings + labour) / 0.6);
};

test('the paper has own name, number, customer, lead text, lines with the prices of another calculation, and terms', async () => {
  const { sheet, values, column, texts } = await paper();
  expect(sheet).toBe('Quote 2026-007');
  expect(texts.slice(0, 3)).toEqual(['Beet harvest workshop (invented)', '1 Field Road', 'Somewhere']);
  expect(texts).toEqual(
    expect.arrayContaining(['Quote 2026-007', 'Thank you for your inquiry. We offer:', 'Payment within 14 days.']),
  );
  const beside = (label: string) => values.find(row => row[0] === label)![2];
  // 2026-10-05 is day 46300 of the sheet; it is valid for 30 days.
  expect([beside('Customer'), beside('Date'), beside('Valid until')]).toEqual(['Neighbour', 46_300, 46_330]);
  expect(column('Price each')).toEqual(sampleLines.map(eachOf));
  const cents = sampleLines.map(line => Math.round(eachOf(line) * 100) * line.quantity);
  expect(column('Line total')).toEqual(cents.map(value => value / 100));
  const total = values.find(row => row.includes('Total'))!;
  expect(total).toContain(cents.reduce((sum, value) => sum + value, 0) / 100);
  expect(texts.find(text => /^Not in this quote, to be clarified first/.test(String(text)))).toBeDefined();
});

/*
 * DIN 20066, length of assemblies, bore up to DN 25 (recalled from memory; common practice where no other tolerance is agreed):
 * up to 630 mm +7/−3, up to 1250 mm +12/−4, up to 2500 mm +20/−6, up to 8000 mm +1.5 %/−0.5 %, above +3 %/−1 %.
 */
const within = (overall: number): string => {
  if (overall <= 630) return '+7 / −3';
  if (overall <= 1250) return '+12 / −4';
  if (overall <= 2500) return '+20 / −6';
  const [over, under] = overall <= 8000 ? [0.015, 0.005] : [0.03, 0.01];
  return `+${overall * over} / −${overall * under}`;
};

test('each line has its overall length with the tolerance of DIN 20066', async () => {
  const { column, texts } = await paper();
  const overall = column('Overall length (mm)') as number[];
  const small = sampleLines.map(({ hose }) => Number(/DN (\d+)/.exec(hose)![1]) <= 25);
  const tolerances = column('Tolerance');
  expect(small.filter(Boolean).length).toBeGreaterThan(3);
  small.forEach((isSmall, index) => isSmall && expect(tolerances[index]).toBe(within(overall[index]!)));
  expect(texts).toContain('Tolerance of the overall length: DIN 20066.');
});

test('it is values only: no formula, no cost, no margin, nothing right of what is printed', async () => {
  const { from, content, headings } = await paper();
  expect(content.formulas.flat().filter(formula => formula !== '')).toEqual([]);
  const quote = await book.content(from);
  // The quote itself names neither: they have a sheet of their own.
  const shownThere = quote.values.flat().filter(cell => /cost|margin|markup|, each/i.test(String(cell)));
  expect(shownThere).toEqual([]);
  const own = await book.content(`${from} costs`);
  const head = own.values.findIndex(row => row.includes('Price each'));
  const costs = own.values[head]!.flatMap((heading, column) =>
    /cost|, each|before rounding/i.test(String(heading)) ? [column] : [],
  );
  expect(costs.length).toBeGreaterThan(4);
  const secret = new Set(
    sampleLines.flatMap((_, row) => costs.map(column => own.values[head + 1 + row]![column])).filter(cost => cost !== 0),
  );
  const cells = content.values.flat();
  expect(cells.filter(cell => typeof cell === 'number' && (secret.has(cell) || cell === 0.4))).toEqual([]);
  expect(cells.filter(cell => /cost|margin|markup|stays here/i.test(String(cell)))).toEqual([]);
  expect(Math.max(...content.values.flatMap(row => row.flatMap((cell, column) => (cell === '' ? [] : [column]))))).toBeLessThan(
    headings.length,
  );
});

test('columns that are left out are not there', async () => {
  const all = await paper();
  expect(all.headings).toEqual(expect.arrayContaining(['Hose', 'Fitting A', 'Tolerance', 'Rating', 'Each at 10']));
  const few = await paper({ number: '8', leftOut: ['hose', 'fittings', 'tolerance', 'drawing', 'pressure', 'breaks'] });
  for (const gone of ['Hose', 'Fitting A', 'Fitting B', 'Tolerance', 'Drawing (not to scale)', 'Rating', 'Each at 10']) {
    expect(few.headings).not.toContain(gone);
  }
  expect(few.headings).toEqual(expect.arrayContaining(['Overall length (mm)', 'Quantity', 'Price each', 'Line total']));
});

test('it stays as sent when the job sheet changes, and both the quote and the list of sent quotes say so', async () => {
  const { from, sheet, column } = await paper();
  const notice = async () =>
    (await book.content(from)).values.map(row => row[0]).find(text => /sent as sheet/.test(String(text)));
  expect(await notice()).toBe('As sent as sheet Quote 2026-007.');
  expect(await changedSinceSent(book.port)).toMatchObject([
    { paper: sheet, quote: from, day: TODAY, changes: [], isCopied: false },
  ]);
  const jobs = await book.content('Jobs');
  const heading = jobs.values.findIndex(row => row.includes('Quantity'));
  const at = `${columnLetters(jobs.values[heading]!.indexOf('Quantity'))}${heading + 2}`;
  const before = column('Quantity')[0] as number;
  await book.write([{ kind: 'values', at: { sheet: 'Jobs', address: at }, values: [[before + 2]] }]);
  expect((await shown(sheet)).column('Quantity')[0]).toBe(before);
  expect(await notice()).toMatch(/^Changed since it was sent as sheet Quote 2026-007/);
  const [since] = await changedSinceSent(book.port);
  expect(since!.changes).toHaveLength(1);
  expect(since!.changes[0]).toContain(`quantity ${before} → ${before + 2}`);
  // The quote is one still, for What-if; the paper is none.
  expect((await quotesOfWorkbook(book.port)).map(each => each.sheet)).toEqual([from]);
  expect(await quoteOfSheet(book.port, sheet)).toBeUndefined();
});

test('a quote of copied lines says that the job sheet does not reach it', async () => {
  await paper({}, { isLinked: false });
  expect(await changedSinceSent(book.port)).toMatchObject([{ changes: [], isCopied: true }]);
});

test('refused: no name, no number, a number that was used, a line without a price', async () => {
  const { from } = await paper();
  const write = (fields: Partial<PaperFields>) => writePaper(book.port, from, { ...FIELDS, ...fields }, TODAY);
  await expect(write({ ownName: ' ' })).rejects.toThrow(/Your name is blank/);
  await expect(write({ number: '' })).rejects.toThrow(/quote number is blank/);
  await expect(write({})).rejects.toThrow('Number 2026-007 was used on 2026-10-05 for sheet Quote 2026-007: enter another.');
  const hoses = await book.content('Hoses');
  const row = hoses.values.findIndex(cells => cells[0] === 'Rowan DN 19') + 1;
  const column = columnLetters(hoses.values[0]!.indexOf('Price per length (per m)'));
  await book.write([{ kind: 'values', at: { sheet: 'Hoses', address: `${column}${row}` }, values: [['']] }]);
  await expect(write({ number: '2026-008' })).rejects.toThrow(/No price in line .*Rowan DN 19/);
});

test('numbers count up', () => {
  expect(['2026-009', 'Q99', '7', 'none', ' A-1 '].map(nextNumber)).toEqual(['2026-010', 'Q100', '8', '', 'A-2']);
});
