import { datedCopy } from '../../../src/sheets/parts/datedCopy';
import { readCopySource, type CopySource } from '../../../src/sheets/copy/copySource';
import type { CopyWishes } from '../../../src/sheets/copy/copyWishes';
import { planCopy } from '../../../src/sheets/copy/planCopy';
import { sheetTicks } from '../../../src/sheets/copy/sheetTicks';
import { FRESH_QUOTE } from '../../../src/sheets/quote/quoteSettings';
import { readQuoteSettings } from '../../../src/sheets/quote/readQuoteSettings';
import { writeQuote } from '../../../src/sheets/quote/writeQuote';
import { writeWhatIf } from '../../../src/sheets/quote/writeWhatIf';
import type { CopiedSheet } from '../../../src/workbook/copiedWorkbook';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { openSample } from '../quote/openSample';

const CUSTOMER: CopyWishes = {
  ...{ sheets: [], kind: 'values', withCosts: false, withParts: false },
  ...{ target: 'file', today: '2026-11-30' },
};
const BY_ITSELF = { kind: 'values', withParts: false, sheets: {} } as const;

const sourceOf = (sheets: Record<string, FakeCell[][]>, details = {}) =>
  readCopySource(fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address: 'A1' }, details).workbook);

const ticksOf = (source: CopySource, choice: Partial<Parameters<typeof sheetTicks>[1]> = {}) =>
  Object.fromEntries(
    sheetTicks(source, { ...BY_ITSELF, ...choice }).map(({ name, isTicked, remark }) => [name, [isTicked, remark]]),
  );

const valuesOf = ({ cells }: CopiedSheet) => cells.map(line => line.map(({ value }) => value));
const copied = (source: CopySource, sheet: string, wishes: Partial<CopyWishes> = {}) =>
  valuesOf(planCopy(source, { ...CUSTOMER, sheets: [sheet], ...wishes }).copy.sheets.find(({ name }) => name === sheet)!);

/** What stands below a heading. */
const below = (values: ReturnType<typeof valuesOf>, heading: string) => {
  const row = values.findIndex(line => line.includes(heading));
  return values.slice(row + 1).map(line => line[values[row]!.indexOf(heading)]!);
};

/** The sample with a quote and a what-if of it. */
async function afterWhatIf() {
  const book = await openSample();
  await book.port.select({ sheet: 'Jobs', address: 'A10' });
  const { settings } = readQuoteSettings({ ...FRESH_QUOTE, margin: '40 %' }, [], undefined);
  const { sheet } = await writeQuote(book.port, settings!, undefined, '2026-11-30');
  await book.calculate();
  const rises = { families: [{ family: 'Larch', rise: 0.05 }], fittings: 0.08, guards: 0.1 };
  await writeWhatIf(book.port, rises, [sheet], '2026-11-30');
  await book.calculate();
  return book;
}

test('tables of a what-if are not ticked, and without costs they go without prices', async () => {
  const book = await afterWhatIf();
  try {
    const source = await readCopySource(book.port);
    const ticks = ticksOf(source);
    for (const name of ['What-if hoses', 'What-if fittings', 'What-if guards'])
      expect(ticks[name]).toEqual([false, 'parts data']);
    expect(ticks).toMatchObject({ Jobs: [true, ''], Quote: [true, ''], Find: [true, ''], Hoses: [false, 'parts data'] });
    const hoses = copied(source, 'What-if hoses');
    expect(below(hoses, 'Hose').filter(value => value !== '').length).toBeGreaterThan(40);
    expect(hoses[0]!.filter(heading => /price/i.test(String(heading)))).toEqual([]);
    const withCosts = copied(source, 'What-if hoses', { withCosts: true });
    const column = withCosts[0]!.indexOf('Price per length (per m)');
    expect(withCosts.filter(line => typeof line[column] === 'number').length).toBeGreaterThan(40);
    expect(hoses.map(line => line[column])).toEqual(hoses.map(() => ''));
    const { leftOut } = planCopy(source, { ...CUSTOMER, sheets: ['Jobs'] });
    expect(leftOut.at(-1)).toMatch(/^Sheets: .*What-if hoses \(parts data\), .*What-if fittings \(parts data\)/);
  } finally {
    book.dispose();
  }
}, 60_000);

test('dated sheets of old values are not ticked, whichever table they are of, and without costs they go without prices', async () => {
  const book = await openSample();
  try {
    const tables = ['Hoses', 'Fittings', 'Guards', 'Machines', 'Dies', 'Rates'];
    for (const name of tables) await book.port.write(datedCopy(await book.content(name), `${name} 2026-11-30`));
    await book.port.write(datedCopy(await book.content('Hoses'), 'Hoses 2026-11-30 (2)'));
    const source = await readCopySource(book.port);
    const ticks = ticksOf(source);
    for (const name of tables) expect(ticks[`${name} 2026-11-30`]).toEqual([false, 'old parts data']);
    expect(ticks['Hoses 2026-11-30 (2)']).toEqual([false, 'old parts data']);
    const old = copied(source, 'Hoses 2026-11-30');
    const prices = below(copied(source, 'Hoses 2026-11-30', { withCosts: true }), 'Price per length (per m)');
    expect(prices.filter(value => typeof value === 'number').length).toBeGreaterThan(40);
    expect(old[0]).not.toContain('Price per length (per m)');
    expect(below(old, 'Hose')).toContain('Alder DN 25');
  } finally {
    book.dispose();
  }
}, 60_000);

/** A list from elsewhere: numbers as text, sections, a note below two blank rows. */
const BULK: FakeCell[][] = [
  ['Price list bulk hose'],
  [],
  ['Article', 'Range', 'Norm', 'DN', 'ID (mm)', 'Max. WP (bar)', 'Price per m', 'Coil (m)'],
  ['Two-wire hose'],
  ['Rowan DN 10', 'Rowan', 'EN 857 2SC', 10, '9,5', 330, '4,85', 50],
  ['Rowan DN 12', 'Rowan', 'EN 857 2SC', 12, '12,7', 275, '5,90', 50],
  [],
  [],
  ['Hazel DN 25', 'Hazel', 'EN 856 4SH', 25, '25,4', 320, '29,75', 30],
];
const COUPLINGS: FakeCell[][] = [
  ['Item no', 'Range', 'Connection', 'Hose ID (mm)', 'Deduction (in)', 'Price each', 'Pack qty'],
  ['Rowan flare DN 10', 'Rowan', '37° flare swivel', '9,5', '13/16', '3,20', 10],
  ['Rowan flare DN 12', 'Rowan', '37° flare swivel', '12,7', '15/16', '3,95', 10],
];
const CRIMP: FakeCell[][] = [
  ['Hose type', 'Insert', 'Sleeve', 'Die set', 'Setting', 'Crimp OD (mm)', 'Tol ± (mm)', 'Insertion (mm)'],
  ['Rowan DN 10', 'Rowan flare DN 10', 'Rowan ferrule DN 10', 'D18', 140, '17,9', '0,1', 24],
];
const RATES: FakeCell[][] = [
  ['Name', 'Amount', 'Remark'],
  ['labour per hour', '58,50', 'shop rate'],
  ['minutes per cut', '1,5', ''],
];
const JOBS: FakeCell[][] = [
  ['Pos.', 'Pcs', 'Hose', 'Coupling left', 'Coupling right', 'OAL (mm)', 'Price each'],
  [10, 4, 'Rowan DN 10', 'Rowan flare DN 10', 'Rowan flare DN 10', 1250, 42.5],
];

test('lists of the shop’s own, with other people’s headings, are not ticked and say why; lines to make are', async () => {
  const source = await sourceOf({ Jobs: JOBS, 'Bulk hose': BULK, Couplings: COUPLINGS, Crimp: CRIMP, Rates: RATES });
  expect(ticksOf(source)).toEqual({
    Jobs: [true, ''],
    'Bulk hose': [false, 'price list'],
    Couplings: [false, 'price list'],
    Crimp: [false, 'parts data'],
    Rates: [false, 'price list'],
  });
  expect(planCopy(source, { ...CUSTOMER, sheets: ['Jobs'] }).leftOut).toEqual([
    'Sheets: Bulk hose (price list), Couplings (price list), Crimp (parts data), Rates (price list).',
  ]);
});

test('a price list that is ticked all the same goes without its prices, below a gap too; with costs it has them', async () => {
  const source = await sourceOf({ 'Bulk hose': BULK, Couplings: COUPLINGS, Jobs: JOBS });
  expect(copied(source, 'Bulk hose').map(line => line[6])).toEqual(Array(9).fill(''));
  expect(copied(source, 'Bulk hose')[8]!.slice(0, 5)).toEqual(['Hazel DN 25', 'Hazel', 'EN 856 4SH', 25, '25,4']);
  expect(copied(source, 'Couplings').map(line => line[5])).toEqual(['', '', '']);
  expect(copied(source, 'Bulk hose', { withCosts: true })[8]![6]).toBe('29,75');
  // What a customer pays stays.
  expect(copied(source, 'Jobs')[1]![6]).toBe(42.5);
  const { leftOut } = planCopy(source, { ...CUSTOMER, sheets: ['Jobs', 'Bulk hose'] });
  expect(leftOut).toEqual([
    'Costs and margins: Bulk hose!G3 (Price per m). Look the copy through before you pass it on.',
    'Sheets: Couplings (price list).',
  ]);
});

test.each([
  ['58,50', ''],
  ['58.50', ''],
  ['1,250', ''],
  ['€ 58,50', ''],
  ['58.50 EUR/h', ''],
  ['35 %', ''],
  [58.5, ''],
  ['see contract', 'see contract'],
] as const)('beside a label of cost, %j is left as %j', async (value, left) => {
  const source = await sourceOf({
    Notes: [['labour per hour', value]],
    Rates: [...RATES.slice(0, 1), ['labour per hour', value]],
  });
  expect(copied(source, 'Notes')).toEqual([['', left]]);
  expect(copied(source, 'Rates')[1]!.slice(0, 2)).toEqual(['', left]);
});

test.each<[string, FakeCell[][], string]>([
  [
    'a short list by the metre',
    [
      ['Hose', 'Price per m'],
      ['Rowan DN 10', 4.85],
    ],
    'price list',
  ],
  [
    'a list of articles',
    [
      ['Article', 'Description', 'Net price'],
      ['Rowan DN 10', 'two-wire hose', 4.85],
    ],
    'price list',
  ],
  [
    'rates under another name',
    [
      ['Rate', 'Value'],
      ['Labour per hour', 58],
    ],
    'price list',
  ],
  [
    'a quote',
    [
      ['Item', 'Description', 'Hose', 'Quantity', 'Price, each', 'Amount'],
      [1, 'lift', 'Rowan DN 10', 4, 70, 280],
    ],
    '',
  ],
  [
    'other rates',
    [
      ['Rate', 'Value'],
      ['exchange', 1.1],
    ],
    '',
  ],
  [
    'a list without prices',
    [
      ['Article', 'Description', 'Net price'],
      ['Rowan DN 10', 'two-wire hose', ''],
    ],
    '',
  ],
  [
    'readings',
    [
      ['Hose', 'Fitting', 'Die', 'Dial', 'Crimp diameter (mm)', 'Reading 1', 'Reading 2', 'Verdict', 'Made by'],
      ['Rowan DN 10', 'Rowan flare DN 10', 'D18', 140, 17.9, 17.9, 17.92, 'OK', 'A.'],
    ],
    '',
  ],
])('%s: said to be %j', async (_, rows, remark) => {
  expect(ticksOf(await sourceOf({ Mine: rows }))).toEqual({ Mine: [remark === '', remark] });
});

test('for an office, and where parts data are wanted, all are ticked; what somebody ticked or unticked counts', async () => {
  const source = await sourceOf({ Jobs: JOBS, 'Bulk hose': BULK });
  expect(ticksOf(source, { kind: 'formulas', withParts: true })).toEqual({ Jobs: [true, ''], 'Bulk hose': [true, ''] });
  expect(ticksOf(source, { sheets: { Jobs: false, 'Bulk hose': true } })).toEqual({
    Jobs: [false, ''],
    'Bulk hose': [true, 'price list'],
  });
});
