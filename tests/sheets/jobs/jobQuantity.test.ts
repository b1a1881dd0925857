import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { readReportText } from '../../../src/sheets/table/readReportText';
import { rememberAnswer } from '../../../src/sheets/table/tableAnswers';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';

const WISHES = { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } };

const HEAD = ['Hose', 'Cut length (mm)'];
const LINES = [
  ['Alder DN 12', 640],
  ['Birch DN 10', 655.5],
];
/** Two lines with further columns beside them. */
const beside = (heading: readonly FakeCell[], ...cells: readonly (readonly FakeCell[])[]) => [
  [...HEAD, ...heading],
  ...LINES.map((line, at) => [...line, ...(cells[at] ?? [])]),
];
const jobs = (rows: readonly (readonly FakeCell[])[], details: FakeDetails = {}) =>
  readJobs(fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: 'A2' }, details).workbook, WISHES);
const asked = async (...from: Parameters<typeof jobs>) => (await jobs(...from)).questions.map(({ sentence }) => sentence);

describe('a column that may say how many is asked about, and no line is taken until then', () => {
  test.each<[string, FakeCell, FakeCell]>([
    ['Number of assemblies', 4, 2],
    ['Number of hoses', 4, 2],
    ['Qty this week', 4, 2],
    ['Week need', 4, 2],
    ['Sets', 4, 2],
    ['No. of hoses', 4, 2],
    ['Wanted', '4', '2'],
    ['Hoses', '4 pcs', '2 pcs'],
    ['Need', 0, 2],
    ['Batch', 1200, 2],
    ['Make this month', '1,200', 2],
    ['Qty to be said', 'see order', 2],
  ])('%s: %p, %p', async (heading, first, second) => {
    const rows = beside([heading], [first], [second]);
    expect(await asked(rows)).toEqual([`No column says how many. Is C: ${heading} the quantity?`]);
    expect((await jobs(rows)).report.taken).toEqual([]);
  });

  test('under a row of units, too', async () => {
    const rows = [[...HEAD, 'Need'], ['', 'mm', 'pcs'], ...LINES.map(line => [...line, 3])];
    expect(await asked(rows)).toEqual(['No column says how many. Is C: Need the quantity?']);
  });

  test('a heading that speaks of a number of things comes before other whole numbers', async () => {
    const rows = beside(['Bundles', 'Qty this week'], [5, 4], [6, 2]);
    expect(await asked(rows)).toEqual([
      'No column says how many. Is D: Qty this week the quantity? Whole numbers are in C: Bundles, too: they are not multiplied with it.',
    ]);
  });
});

describe('columns that are plainly something else are not', () => {
  test.each<[string, FakeCell, FakeCell]>([
    ['Batch no.', 1200, 1201],
    ['Serial', 41, 42],
    ['Part number', 41, 42],
    ['Tel', 4711, 4712],
    ['Size', 12, 10],
    ['Week', 41, 42],
    ['Stock length', 1250, 1300],
    ['Hose price', 14, 15],
    ['Total cost', 14, 15],
    ['Weight (kg)', 3, 4],
    ['Reel', 3, 4],
    ['Bundles', 'A4', 'B2'],
    ['Bundles', 1, 1],
  ])('%s: %p, %p', async (heading, first, second) => {
    expect(await asked(beside([heading], [first], [second]))).toEqual([]);
  });

  test('dates by their format', async () => {
    const rows = beside(['Collected'], [46000], [46010]);
    expect(await asked(rows, { formats: { Jobs: { 'C2:C3': 'dd/mm/yyyy' } } })).toEqual([]);
  });
});

describe('a quantity behind blank columns', () => {
  test.each([1, 2])('%i blank: it is the table’s where its rows match', async blanks => {
    const gap = Array<string>(blanks).fill('');
    const { lines, questions } = await jobs(beside([...gap, 'Qty'], [...gap, 4], [...gap, 2]));
    expect(questions).toEqual([]);
    expect(lines.map(({ quantity }) => quantity)).toEqual([4, 2]);
  });

  test('settings beside the table are none of it', async () => {
    const rows = [
      [...HEAD, '', '', 'Saw'],
      [...LINES[0]!, '', '', 3],
      [...LINES[1]!, '', '', ''],
      ['', '', '', '', 7],
      ['', '', '', '', 8],
    ];
    const { tables } = await jobs(rows);
    expect(tables[0]!.table.block.columns).toBe(2);
  });

  test('a rack two columns beside the lines stays one', async () => {
    const rows = beside(['', '', 'Hose', 'Length (m)'], ['', '', 'Alder DN 12', 20], ['', '', 'Birch DN 10', 30]);
    const { tables } = await jobs(rows);
    expect(tables[0]!.table.block.columns).toBe(2);
  });
});

describe('what was read says where one of each line was taken', () => {
  test('without a quantity column', async () => {
    const { report } = await jobs([HEAD, ...LINES]);
    expect(readReportText(report)).toBe('Jobs A1:B3: 2 rows taken. No quantity column: one of each line.');
  });

  test('after the answer that a column is no quantity', async () => {
    const { workbook } = fakeWorkbook({ Jobs: beside(['Need'], [4], [2]) }, { sheet: 'Jobs', address: 'A2' });
    await rememberAnswer(workbook, 'jobs', 'Jobs', 'role', 'Need', 'none');
    const { report } = await readJobs(workbook, WISHES);
    expect(readReportText(report)).toBe('Jobs A1:C3: 2 rows taken. No quantity column: one of each line.');
  });

  test('not with one, nor while the question is open', async () => {
    expect(readReportText((await jobs(beside(['Qty'], [4], [2]))).report)).toBe('Jobs A1:C3: 2 rows taken');
    expect(readReportText((await jobs(beside(['Need'], [4], [2]))).report)).toBe('Jobs A1:C3: 0 rows taken; left out: 2 STOP');
  });
});
