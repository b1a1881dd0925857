import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { writeWhatIf } from '../../../src/sheets/quote/writeWhatIf';
import { asCommaTexts, PRICED } from './commaTexts';
import { costParts, plainHoseParts, sampleLines, upToCents, type Wanted } from './independentCosts';
import { openSample } from './openSample';

jest.setTimeout(60_000);

let book: Awaited<ReturnType<typeof openSample>>;
beforeEach(async () => {
  book = await openSample();
  await book.port.write([
    { kind: 'values', at: { sheet: 'Jobs', address: 'V9:V10' }, values: [['Guard'], [GUARD]] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'B12:C12' }, values: [['', '']] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'G12' }, values: [[sampleLines[PLAIN]!.overall]] },
    { kind: 'values', at: { sheet: 'Jobs', address: 'V12' }, values: [['']] },
  ]);
  for (const [sheet, heading] of PRICED) expect((await asCommaTexts(book, sheet, heading)).join(' ')).toMatch(/\d,\d/);
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
});
afterEach(() => book.dispose());

const GUARD = 'woven sleeve 30';
/** The line that is a hose without couplings. */
const PLAIN = 2;
const LEAST = 15;
const lines: readonly Wanted[] = sampleLines.map((line, index) => (index === 0 ? { ...line, guard: GUARD } : line));
const RISES = { Larch: 0.05, Alder: 0, Rowan: 0.12 } as const;

const margin = ({ hose, fittings, labour, guard }: ReturnType<typeof costParts>) => (hose + fittings + labour + guard) / 0.6;
const familyOf = (line: Wanted) => line.hose.split(' ')[0] as keyof typeof RISES;

function priceOf(
  line: Wanted,
  index: number,
  rises?: { readonly hose: number; readonly fittings: number; readonly guards: number },
) {
  const parts = index === PLAIN ? plainHoseParts(line, rises?.hose ?? 0) : costParts(line, rises);
  return Math.max(upToCents(margin(parts)), LEAST);
}

async function quote() {
  const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %' }, [], undefined);
  const written = await writeQuote(book.port, settings!, undefined, '2026-10-05');
  await book.calculate();
  return written;
}

async function table(sheet: string, heading: string) {
  const { values } = await book.content(sheet);
  const head = values.findIndex(row => row.includes(heading));
  const column = (name: string) => values.slice(head + 1, head + 1 + lines.length).map(row => row[values[head]!.indexOf(name)]!);
  return { values, column };
}

test('a quote from tables whose numbers are text has its prices, and misses no rate', async () => {
  const { sheet, costs } = await quote();
  const { column } = await table(sheet, 'Price each');
  expect(column('Price each')).toEqual(lines.map((line, index) => priceOf(line, index)));
  expect(column('Note')).toEqual(lines.map(() => ''));
  const { values } = await book.content(costs);
  const at = values[0]!.indexOf('Missing rates');
  expect(values[1]![at]).toBe('');
});

test('a what-if raises prices that are text, and follows the number that replaces one', async () => {
  const { sheet } = await quote();
  const families = Object.entries(RISES).map(([family, rise]) => ({ family, rise }));
  const [name, copied] = await writeWhatIf(book.port, { families, fittings: 0.08, guards: 0.1 }, [sheet], '2026-10-05');
  await book.calculate();
  const { values, column } = await table(name!, 'Price each now');
  const after = lines.map((line, index) => priceOf(line, index, { hose: RISES[familyOf(line)], fittings: 0.08, guards: 0.1 }));
  expect(column('Price each after')).toEqual(after);
  // The same parts in both catalogues: none was left out for its price.
  const counts = [values[1]![2], values[2]![2]].map(handle => String(handle).replace(/^CAT-[0-9a-f]{8} /, ''));
  expect(counts[1]).toBe(counts[0]);

  const hoses = await book.content('Hoses');
  const row = hoses.values.findIndex(cells => cells[0] === 'Larch DN 16');
  const at = hoses.values[0]!.indexOf('Price per length (per m)');
  const address = `${String.fromCharCode(65 + at)}${row + 1}`;
  const raised = async () => (await book.content(copied!)).values[row]![at];
  await book.write([
    { kind: 'format', at: { sheet: 'Hoses', address }, numberFormat: '0.00' },
    { kind: 'values', at: { sheet: 'Hoses', address }, values: [[20]] },
  ]);
  expect(await raised()).toBeCloseTo(20 * 1.05, 9);
  // Another text is not taken for the one that was read.
  await book.write([
    { kind: 'format', at: { sheet: 'Hoses', address }, numberFormat: '@' },
    { kind: 'values', at: { sheet: 'Hoses', address }, values: [['21,5']] },
  ]);
  expect(await raised()).toEqual(expect.objectContaining({ error: '#N/A' }));
});
