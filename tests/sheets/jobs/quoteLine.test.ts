import { measureUnit } from '../../../src/core/units/measureUnit';
import { quoteLines, type QuoteLineWishes } from '../../../src/sheets/jobs/quoteLine';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';
import { demoQuotes } from '../quote/demoQuotes';

const MM = measureUnit('length', 'mm')!;
const INCH = measureUnit('length', 'in')!;
const [STRAIGHT, ELBOW] = ['Alder cone straight DN 12', 'Alder cone elbow DN 12'];

async function read(
  rows: FakeCell[][],
  { unit = MM, address = 'A1', wishes = {} as QuoteLineWishes, details = {} as FakeDetails, catalogue = true } = {},
) {
  const sheets = { ...(catalogue && demoQuotes()), Jobs: rows };
  return quoteLines(fakeWorkbook(sheets, { sheet: 'Jobs', address }, details).workbook, unit, wishes);
}

const HEAD = ['No.', 'For', 'Hose', 'End 1', 'End 2', 'Overall (mm)', 'Qty', 'Guard', 'Status'];
const jobs: FakeCell[][] = [
  ['Our week'],
  HEAD,
  [1, 'Lift', 'Alder DN 12', STRAIGHT, ELBOW, 620, 4, 'sleeve', ''],
  [2, 'Tilt', 'Alder DN 12', STRAIGHT, '', 620, 4, '', ''],
  [3, 'Swing', 'Alder DN 12', STRAIGHT, ELBOW, 'long', 1, '', ''],
  [4, 'Boom', 'Alder DN 12', STRAIGHT, ELBOW, 700, '', '', ''],
  [5, 'Suction', 'Willow DN 25', 'Alder cone straight DN 25', 'Alder cone straight DN 25', 900, 1, '', ''],
  [6, 'Drum', 'Alder DN 12', STRAIGHT, STRAIGHT, 700, 2, '', 'done'],
];

test('lines that may be made are read; those that must not be come by name, with the reason', async () => {
  const { lines, stops } = await read(jobs, { wishes: { whateverStatus: true } });
  expect(lines.map(({ row, quantity, guard }) => [row, quantity, guard])).toEqual([
    [3, 4, 'sleeve'],
    [8, 2, ''],
  ]);
  expect(lines[0]!.formulas).toMatchObject({ line: '=Jobs!A3', hose: '=Jobs!C3', overall: '=Jobs!F3', guard: '=Jobs!H3' });
  expect(lines[1]!.formulas.guard).toBeUndefined();
  expect(stops.map(({ row, line, sentence }) => [row, line, sentence])).toEqual([
    [4, 'line 2', expect.stringContaining('only one coupling')],
    [5, 'line 3', expect.stringContaining('overall length is "long"')],
    [6, 'line 4', 'quantity is blank: fill it in'],
    [7, 'line 5', expect.stringContaining('no crimp data')],
  ]);
});

test('lines that are done are left out where that matters, and told', async () => {
  const { lines, report } = await read(jobs);
  expect(lines.map(({ row }) => row)).toEqual([3]);
  expect(report.leftOut).toContainEqual(expect.objectContaining({ row: 8, reason: 'done' }));
});

test('hidden rows are left out and told; a tick takes them', async () => {
  const details = { hiddenRows: { Jobs: [2] } };
  const without = await read(jobs, { wishes: { whateverStatus: true }, details });
  expect(without.lines.map(({ row }) => row)).toEqual([8]);
  expect(without.report.leftOut).toContainEqual({ row: 3, reason: 'hidden' });
  const taken = await read(jobs, { wishes: { whateverStatus: true, take: new Set(['hidden']) }, details });
  expect(taken.lines.map(({ row }) => row)).toEqual([3, 8]);
});

test('only the picked rows are read', async () => {
  const { lines } = await read(jobs, { address: 'A8:I8', wishes: { whateverStatus: true } });
  expect(lines.map(line => line.row)).toEqual([8]);
});

// 1 in = 25.4 mm, 1 m = 1000 mm exactly. Source: NIST SP 811.
test.each<[heading: string, cell: FakeCell, unit: typeof MM, overall: number, formula: string | undefined]>([
  ['Overall length (mm)', 1250, MM, 1250, '=Jobs!D2'],
  ['Overall length (in)', 27.5, MM, 698.5, '=Jobs!D2*25.4'],
  ['Overall length (m)', 1.25, MM, 1250, '=Jobs!D2*1000'],
  ['Overall length (mm)', 698.5, INCH, 27.5, '=Jobs!D2/25.4'],
  ['Overall length (ft)', 2, INCH, 24, '=Jobs!D2*12'],
  // Read by our functions as it stands.
  ['Overall length (in)', '27 1/2"', INCH, 27.5, '=Jobs!D2'],
  ['Overall length (mm)', '698,5', MM, 698.5, '=Jobs!D2'],
  // A function takes no unit words, and a formula cannot multiply a text: the value is held.
  ['Overall length (mm)', '698.5 mm', MM, 698.5, undefined],
  ['Overall length (in)', '27 1/2', MM, 698.5, undefined],
])('%s with %p for a catalogue in another unit or the same: converted exactly', async (heading, cell, unit, overall, formula) => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', heading, 'Quantity'],
    ['Alder', 'a', 'b', cell, 1],
  ];
  const { lines } = await read(rows, { unit, catalogue: false });
  expect([lines[0]!.overall.toNumber(), lines[0]!.formulas.overall]).toEqual([overall, formula]);
});

test('merged names are referred to where they stand', async () => {
  const rows = [HEAD, [1, '', 'Alder DN 12', STRAIGHT, ELBOW, 620, 1], [2, '', '', STRAIGHT, ELBOW, 700, 1]];
  const { lines } = await read(rows, { details: { merges: { Jobs: ['C2:C3'] } } });
  expect(lines.map(({ hose, formulas }) => [hose, formulas.hose])).toEqual([
    ['Alder DN 12', '=Jobs!C2'],
    ['Alder DN 12', '=Jobs!C2'],
  ]);
});

test('a cell that is a date is no hose of 46 metres', async () => {
  const rows = [HEAD, [1, '', 'Alder DN 12', STRAIGHT, ELBOW, 46_028, 1], [2, '', 'Alder DN 12', STRAIGHT, ELBOW, 700, 1]];
  const { lines, stops } = await read(rows, { details: { formats: { Jobs: { 'F2:F2': 'dd/mm/yyyy' } } } });
  expect(lines.map(({ row }) => row)).toEqual([3]);
  expect(stops[0]).toMatchObject({ row: 2, sentence: expect.stringContaining('is a date') });
});

test('a heading without a unit is asked about, and no line of it is priced', async () => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length', 'Quantity'],
    ['Alder DN 12', STRAIGHT, ELBOW, 48, 1],
  ];
  await expect(read(rows)).rejects.toThrow(/has no unit that is known/);
});

test('a sheet without hose and length holds no job table', async () => {
  await expect(
    read([
      ['Hose', 'Quantity'],
      ['Alder DN 12', 4],
    ]),
  ).rejects.toThrow(/no table with a column for the hose/);
});

describe('a line with a single coupling that is meant so', () => {
  const wishes = { whateverStatus: true, plainEnds: true };
  test('is bought for like the others', async () => {
    expect((await read(jobs, { wishes })).lines.map(({ row }) => row)).toContain(4);
  });

  test('stays out of a quote, with a sentence that says what to do', async () => {
    const { lines, stops, report } = await read(jobs, { wishes: { ...wishes, isPriced: true } });
    expect(lines.map(({ row }) => row)).toEqual([3, 8]);
    expect(stops[0]).toMatchObject({ row: 4, sentence: 'one coupling only: price it by hand' });
    expect(report.taken).not.toContain(4);
  });
});

test('cells whose texts no formula can follow are told; a hose alone follows the length it is cut to', async () => {
  const rows = [
    ['Hose', 'End 1', 'End 2', 'Overall (mm)', 'Qty'],
    ['Alder DN 12', STRAIGHT, ELBOW, '1,2 m', 4],
    ['Alder DN 12', STRAIGHT, ELBOW, `4' 3 1/2"`, '4'],
    ['Alder DN 12', STRAIGHT, ELBOW, '698,5', 4],
  ];
  const { lines } = await read(rows);
  expect(lines.map(({ row, held }) => [row, ...held])).toEqual([[2, 'overall'], [3, 'overall', 'quantity'], [4]]);
  const alone = await read([
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Alder DN 12', 700, 4],
  ]);
  expect(alone.lines.map(({ held, formulas }) => [formulas.overall, ...held])).toEqual([['=Jobs!B2']]);
});
