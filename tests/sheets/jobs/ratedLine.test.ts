import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { benchSteps, pressureText } from '../../../src/sheets/benchcard/benchSteps';
import { gatherCards } from '../../../src/sheets/jobs/gatherCards';
import { ratingText } from '../../../src/sheets/jobs/lineRating';
import { quoteLines } from '../../../src/sheets/jobs/quoteLine';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { tagsOf } from '../../../src/sheets/tags/tag';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../quote/demoQuotes';

const bar = measureUnit('pressure', 'bar')!;
const step = { value: new Decimal(1), unit: measureUnit('length', 'mm')! };
const CONE = 'Alder cone straight DN 12';
const RULE = { factor: new Decimal(2), hold: '30 s', source: '' };

/** The couplings are rated 3010 psi, which are 207.532194497388 bar (1 psi = 6.894757293168 kPa, from lbf and inch); the hose 275 bar. */
const [PSI, BAR] = [3010, 207.532194497388];

/** A line with a working pressure of its own, or without one: "". */
function book(heading: string, pressure: FakeCell) {
  const sheets = demoQuotes();
  const [head, ...fittings] = sheets.Fittings!;
  const at = head!.indexOf('Working pressure (bar)');
  const inPsi = (row: FakeCell[], cell: FakeCell) => row.map((own, column) => (column === at ? cell : own));
  const Fittings = [inPsi(head!, 'Working pressure (psi)'), ...fittings.map(row => inPsi(row, row[at] === '' ? '' : PSI))];
  const Jobs: FakeCell[][] = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Quantity', heading],
    ['Alder DN 12', CONE, CONE, 1250, 1, pressure],
  ];
  return fakeWorkbook({ ...sheets, Fittings, Jobs }, { sheet: 'Jobs', address: 'A2' }).workbook;
}

async function lineOf(heading: string, pressure: FakeCell) {
  const [line] = (await readJobs(book(heading, pressure), { step, pressureUnit: bar })).lines;
  return { text: ratingText(line!).replace(/;.*$/, ''), from: line!.pressure!.from, notes: line!.notes };
}

test('tag and card have a converted rating in whole bar, rounded down; the proof test goes by it', async () => {
  const options = { unit: 'mm', step: new Decimal(1), machine: '', pressureUnit: 'bar' } as const;
  const { cards } = await gatherCards(book('Note', ''), options);
  expect(cards.map(pressureText)).toEqual(['207 bar']);
  expect(tagsOf(cards, { maker: 'Workshop', prefix: 'W-', today: '2026-10-05' })[0]!.pressure).toBe('max 207 bar');
  expect(benchSteps(cards[0]!, RULE).find(({ name }) => name === 'Test')!.text).toMatch(/^at 414 bar /);
});

test.each([
  ['', '207 bar', 'weakest part', []],
  // What the column Working pressure shows, with and without its decimals, is the weakest part's.
  [207, '207 bar', 'weakest part', []],
  [BAR, '207 bar', 'weakest part', []],
  [206.5, '206.5 bar', 'sheet', []],
  [208, '207 bar', 'weakest part', ['the sheet says 208 bar, the weakest part is rated 207 bar: the lower counts']],
] as const)('beside a rating of 207.53 bar the sheet says "%s": %s, from %s', async (cell, text, from, notes) => {
  expect(await lineOf('Working pressure (bar)', cell)).toEqual({ text, from, notes });
});

test.each([
  [PSI, '207 bar', 'weakest part'],
  [2995.5, '2995.5 psi', 'sheet'],
  [2995.123, '2995 psi', 'sheet'],
] as const)('a sheet in psi that says %d: %s, from %s, without a note', async (cell, text, from) => {
  expect(await lineOf('Working pressure (psi)', cell)).toEqual({ text, from, notes: [] });
});

test('a quote takes a lower pressure of the sheet in the catalogue’s unit, rounded down', async () => {
  const { lines } = await quoteLines(book('Working pressure (psi)', 1500), step.unit);
  // 1500 psi are 103.42 bar.
  expect(lines.map(({ lowerPressure }) => lowerPressure?.toNumber())).toEqual([103]);
});
