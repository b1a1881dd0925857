import { NO_CRIMP_FIELDS } from '../../../src/sheets/crimps/crimpFields';
import { gatherRecords } from '../../../src/sheets/inspection/gatherRecords';
import { FRESH_FIELDS, NOT_NOTED } from '../../../src/sheets/inspection/inspectionRecord';
import { workFacts } from '../../../src/sheets/inspection/recordFacts';
import { recordGrowth } from '../../../src/sheets/inspection/recordsLog';
import { recall } from '../../../src/sheets/recall/recall';
import { recordRows } from '../../../src/sheets/recall/recordRows';
import { addressOf } from '../../../src/workbook/a1';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const HEAD = [
  'Job no.',
  'Serial',
  'End',
  'Hose',
  'Hose batch',
  'Hose made',
  'Fitting',
  'Coupling batch',
  'Target (mm)',
  'Tol (mm)',
];
const GOOD = [24.9, 0.1, 24.9, 24.9, 24.9, 24.9];
const row = (
  serial: string,
  end: string,
  lot: string,
  made: string,
  coupling: string,
  job = 'J-12',
  hose = 'Hazel',
): FakeCell[] => [job, serial, end, hose, lot, made, 'S', coupling, ...GOOD];

/** What the records of all rows come to, once they are added. */
async function added(rows: readonly FakeCell[][], hoseLot = '') {
  const sheets = { Readings: [[...HEAD, 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'], ...rows] };
  const { workbook } = fakeWorkbook(sheets, { sheet: 'Readings', address: 'A2' });
  const fields = { ...FRESH_FIELDS, hoseLot };
  const bench = { unit: 'mm', step: '1' } as const;
  const { records } = await gatherRecords(workbook, {
    fields,
    crimps: NO_CRIMP_FIELDS,
    otherSheet: '',
    pressureUnit: 'bar',
    bench,
  });
  const options = { fields, result: NOT_NOTED, handle: '', source: '', today: '2026-11-03' };
  await workbook.write((await recordGrowth(workbook, records, options)).appended!.changes);
  const [headings, ...values] = (await workbook.used('Inspection records'))!.values;
  const column = (heading: string) => values.map(cells => cells[headings!.indexOf(heading)]);
  return { workbook, records, options, column };
}

const J12 = [
  row('S-4', '', 'LB-1001', '2026-03-02', 'C-1'),
  row('S-5', '', 'lb-101', '2026-04-02', 'C-2'),
  row('S-6', '', 'lb-101', '2026-04-02', 'C-2', 'J-13'),
];

test('each row keeps its own hose lot and its own day of make, whatever else its job has', async () => {
  const { records, options, column } = await added(J12);
  expect(records.map(({ title }) => title)).toEqual(['Line J-12', 'Line J-13']);
  expect(column('Hose lot')).toEqual(['LB-1001', 'lb-101', 'lb-101']);
  expect(column('Coupling lot')).toEqual(['C-1', 'C-2', 'C-2']);
  const made = column('Hose made');
  expect(new Set(made.slice(1)).size).toBe(1);
  expect(made[0]).not.toBe(made[1]);
  // The paper of the job names both.
  expect(workFacts(records[0]!, options)).toContainEqual({ label: 'Hose lot', value: 'LB-1001, lb-101' });
});

test('a recall finds the rows of its lot and no others', async () => {
  const { workbook } = await added(J12);
  const { records, openRecords } = recall([], await recordRows(workbook), { by: 'lot', of: 'hose', lot: 'lb-101', part: '' });
  expect(records.map(({ piece }) => piece)).toEqual(['S-5', 'S-6']);
  expect(openRecords).toEqual([]);
});

test('a row without a lot has that of its other end, else the typed one, never that of another assembly', async () => {
  const rows = [
    row('S-4', 'A', 'LB-1001', '', 'C-1'),
    row('S-4', 'B', '', '', 'C-1'),
    row('S-5', 'A', '', '', 'C-1'),
    row('S-5', 'B', '', '', 'C-1'),
  ];
  expect((await added(rows)).column('Hose lot')).toEqual(['LB-1001', 'LB-1001', '', '']);
  expect((await added(rows, 'LB-7')).column('Hose lot')).toEqual(['LB-1001', 'LB-1001', 'LB-7', 'LB-7']);
});

test('each row names its own hose and its own assembly, the paper all of them', async () => {
  const rows = [row('S-4', '', 'LB-1', '', 'C-1'), row('S-5', '', 'LB-2', '', 'C-1', 'J-12', 'Rowan')];
  const { records, options, column } = await added(rows);
  expect(column('Hose')).toEqual(['Hazel', 'Rowan']);
  expect(column('Assembly')).toEqual(['S-4', 'S-5']);
  const facts = workFacts(records[0]!, options);
  expect(facts).toContainEqual({ label: 'Hose', value: 'Hazel, Rowan' });
  expect(facts).toContainEqual({ label: 'Assembly', value: 'S-4, S-5' });
});

test('rows that were added with the assemblies of their whole line are not added again', async () => {
  const { workbook, records, options } = await added(J12);
  const [headings] = (await workbook.used('Inspection records'))!.values;
  const at = (row: number, heading: string) => ({
    sheet: 'Inspection records',
    address: addressOf({ row, column: headings!.indexOf(heading), rows: 1, columns: 1 }),
  });
  await workbook.write([1, 2].map(row => ({ kind: 'values', at: at(row, 'Assembly'), values: [['S-4, S-5']] })));
  expect(await recordGrowth(workbook, records, options)).toMatchObject({ added: 0, standing: 3 });
  // Another reading makes it another row.
  await workbook.write([{ kind: 'values', at: at(1, 'Reading 1'), values: [[24.8]] }]);
  expect(await recordGrowth(workbook, records, options)).toMatchObject({ added: 1, standing: 2 });
});
