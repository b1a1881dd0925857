import { workbookCatalogue } from '../../../src/sheets/catalogue/workbookCatalogue';
import type { CellValue } from '../../../src/workbook/workbook';
import { FRESH_QUOTE, type QuoteFieldsText } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { quoteOfSheet } from '../../../src/sheets/quote/readQuote';
import { readRises } from '../../../src/sheets/quote/riseFields';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { whatIfSources, writeWhatIf } from '../../../src/sheets/quote/writeWhatIf';
import { sampleLines, costParts, plainHoseParts, upToCents, type Wanted } from './independentCosts';
import { openSample } from './openSample';

jest.setTimeout(60_000);

let book: Awaited<ReturnType<typeof openSample>>;
beforeEach(async () => {
  book = await openSample();
  await book.port.write([{ kind: 'values', at: { sheet: 'Jobs', address: 'V9:V10' }, values: [['Guard'], [GUARD]] }]);
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

const GUARD = 'woven sleeve 30';
const lines: readonly Wanted[] = sampleLines.map((line, index) => (index === 0 ? { ...line, guard: GUARD } : line));
const RISES = { Larch: 0.05, Alder: 0, Rowan: 0.12 } as const;

async function quote(fields: Partial<QuoteFieldsText>) {
  const { settings } = readQuoteSettings({ ...FRESH_QUOTE, ...fields }, [], undefined);
  const { sheet } = await writeQuote(book.port, settings!, undefined, '2026-10-05');
  await book.calculate();
  return sheet;
}

async function compare(sheets: readonly string[]) {
  const families = Object.entries(RISES).map(([family, rise]) => ({ family, rise }));
  const names = await writeWhatIf(book.port, { families, fittings: 0.08, guards: 0.1 }, sheets, '2026-10-05');
  await book.calculate();
  const { values } = await book.content(names[0]!);
  const head = values.findIndex(row => row.includes('Price each now'));
  const rows = values.slice(head + 1);
  const column = (heading: string) => rows.map(row => row[values[head]!.indexOf(heading)]!);
  return { names, values, rows, column };
}

function after(line: Wanted, price: (parts: ReturnType<typeof costParts>) => number): number {
  const family = line.hose.split(' ')[0] as keyof typeof RISES;
  return upToCents(price(costParts(line, { hose: RISES[family], fittings: 0.08, guards: 0.1 })));
}
const margin = ({ hose, fittings, labour, guard }: ReturnType<typeof costParts>) => (hose + fittings + labour + guard) / 0.6;

const catalogueSheets = ['Catalogue', 'Hoses', 'Fittings', 'Guards', 'Jobs'];
const contents = async () => Promise.all(catalogueSheets.map(async sheet => (await book.content(sheet)).values));

it('prices before and after are those that another calculation gives; nothing of the original changes', async () => {
  const sheet = await quote({ margin: '40 %' });
  const before = await contents();
  const { names, column, values } = await compare([sheet]);
  expect(names).toEqual(['What-if', 'What-if hoses', 'What-if fittings', 'What-if guards']);
  expect(column('Price each now')).toEqual(lines.map(line => upToCents(margin(costParts(line)))));
  expect(column('Price each after')).toEqual(lines.map(line => after(line, margin)));
  expect(column('Quote')).toEqual(lines.map(() => sheet));
  const differences = column('Line difference') as number[];
  const [now, then] = ['Line now', 'Line after'].map(heading =>
    (column(heading) as number[]).reduce((sum, each) => sum + each, 0),
  );
  expect(differences.reduce((sum, each) => sum + each, 0)).toBeCloseTo(then! - now!, 6);
  const sums = values.find(row => row[0] === sheet && typeof row[3] === 'number')!;
  expect(sums.slice(3, 6)).toEqual([expect.closeTo(now!, 6), expect.closeTo(then!, 6), expect.closeTo(then! - now!, 6)]);
  // The two handles: that of the workbook, and another for the same parts with other prices.
  const handles = [values[1]![2], values[2]![2]] as string[];
  expect(handles[0]).toBe(await book.cell('Catalogue', 'B5'));
  const counts = (handle: string) => handle.replace(/^CAT-[0-9a-f]{8} /, '');
  expect(counts(handles[1]!)).toBe(counts(handles[0]!));
  expect(handles[1]).not.toBe(handles[0]);
  expect(await contents()).toEqual(before);
});

it('the workbook’s own catalogue counts on, and nobody is asked which of the two does', async () => {
  await compare([await quote({ margin: '40 %' })]);
  expect(await workbookCatalogue(book.port)).toMatchObject({
    cell: { sheet: 'Catalogue', address: 'B5' },
    others: [{ sheet: 'What-if' }],
    isAsked: false,
  });
});

it('follows a rise that is changed in its cell, and a correction of the original catalogue', async () => {
  const sheet = await quote({ margin: '40 %' });
  const { names, values } = await compare([sheet]);
  const larch = values.findIndex(row => row[0] === 'Larch') + 1;
  await book.write([{ kind: 'values', at: { sheet: names[0]!, address: `C${larch}` }, values: [[0.5]] }]);
  const read = async () => {
    const content = await book.content(names[0]!);
    const head = content.values.findIndex(row => row.includes('Price each now'));
    return content.values.slice(head + 1).map((row: readonly CellValue[]) => row[6]);
  };
  const parts = costParts(lines[3]!, { hose: 0.5, fittings: 0.08, guards: 0.1 });
  expect((await read())[3]).toBe(upToCents(margin(parts)));
  const hoses = await book.content('Hoses');
  const row = hoses.values.findIndex(cells => cells[0] === 'Larch DN 16') + 1;
  const letters = String.fromCharCode(65 + hoses.values[0]!.indexOf('Price per length (per m)'));
  await book.write([{ kind: 'values', at: { sheet: 'Hoses', address: `${letters}${row}` }, values: [[20]] }]);
  const metres = parts.cut / 1000;
  expect((await read())[3]).toBe(upToCents(margin({ ...parts, hose: (metres * 20 * 1.5) / 0.96 })));
});

it('a hose without couplings is priced before and after, with the labour of a cut alone', async () => {
  await book.write([
    { kind: 'values', at: { sheet: 'Jobs', address: 'B12:C12' }, values: [['', '']] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'G12' }, values: [[lines[2]!.overall]] },
  ]);
  const sheet = await quote({ margin: '40 %' });
  const { column } = await compare([sheet]);
  const plain = lines[2]!;
  const price = (rise: number) => Math.max(upToCents(margin(plainHoseParts(plain, rise))), 15);
  expect(column('Price each now')[2]).toBe(price(0));
  expect(column('Price each after')[2]).toBe(price(RISES.Larch));
  expect(column('Line difference')[2]).toBeCloseTo((price(RISES.Larch) - price(0)) * plain.quantity, 6);
  expect(column('Price each after')[3]).toBe(after(lines[3]!, margin));
});

it('several quotes stand in one comparison, quotes with markups among them', async () => {
  const first = await quote({ margin: '40 %' });
  const second = await quote({
    method: 'markup',
    markupHose: '50 %',
    markupFittings: '80 %',
    markupGuards: '25 %',
    markupLabour: '10 %',
    breaks: '',
  });
  const { column, rows } = await compare([first, second]);
  expect(rows).toHaveLength(12);
  const marked = ({ hose, fittings, labour, guard }: ReturnType<typeof costParts>) =>
    hose * 1.5 + fittings * 1.8 + guard * 1.25 + labour * 1.1;
  expect(column('Price each after').slice(6)).toEqual(lines.map(line => after(line, marked)));
});

it('quotes are found with customer and validity, other sheets are not', async () => {
  await quote({ margin: '40 %', customer: 'Neighbour', validDays: '10' });
  const { quotes, families } = await whatIfSources(book.port);
  expect(quotes.map(({ sheet, customer, validUntil, rows }) => [sheet, customer, validUntil, rows.length])).toEqual([
    ['Quote', 'Neighbour', 46_310, 6],
  ]);
  expect(families).toEqual(['Alder', 'Larch', 'Rowan', 'Willow']);
  expect(await quoteOfSheet(book.port, 'Jobs')).toBeUndefined();
});

test.each([
  ['5', 0.05],
  [' 7.5 % ', 0.075],
  ['-3', -0.03],
  ['', 0],
])('a rise of "%s" per cent is %d', (text, rise) => {
  expect(readRises({ Larch: text, Alder: '1' }, ['Larch', 'Alder']).rises!.families[0]).toEqual({ family: 'Larch', rise });
});

test('no rise at all is nothing to compare; words and impossible falls are mistakes', () => {
  expect(readRises({}, ['Larch'])).toEqual({ rises: undefined, mistakes: {} });
  expect(readRises({ Larch: "5'" }, ['Larch']).mistakes).toEqual({ Larch: 'enter per cent, like 5' });
  expect(readRises({ Larch: 'more', Alder: '-100' }, ['Larch', 'Alder']).mistakes).toEqual({
    Larch: 'enter per cent, like 5',
    Alder: 'that is too much to be right',
  });
});
