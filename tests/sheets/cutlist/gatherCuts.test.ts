import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';
import { gatherAgain, gatherCuts, isSameWork, type CutWishes } from '../../../src/sheets/cutlist/gatherCuts';
import { leftOutSentences } from '../../../src/sheets/cutlist/leftOutSentences';
import { lengthLimitsOf } from '../../../src/sheets/jobs/lengthLimitsOf';
import { readJobs } from '../../../src/sheets/jobs/readJobs';
import { standingWorkbook } from '../parts/standingWorkbook';
import { fakeWorkbook, type FakeCell, type FakeDetails } from '../../workbook/fakeWorkbook';

const settings: CutSettings = {
  unit: 'mm',
  step: new Decimal(1),
  kerf: new Decimal(3),
  squaring: undefined,
  keep: undefined,
  ageLimitMonths: undefined,
  isOldestFirst: false,
};
const Rack = [
  ['Hose', 'Length (m)', 'Place'],
  ['Larch DN 12', 40, 'A1'],
];
type Rows = readonly (readonly FakeCell[])[];

const open = (Jobs: Rows, details: FakeDetails = {}, address = 'A2') =>
  fakeWorkbook({ Jobs, Rack }, { sheet: 'Jobs', address }, details);
const gather = (jobs: Rows, details: FakeDetails = {}, wishes: CutWishes = {}, as = settings) =>
  gatherCuts(open(jobs, details).workbook, 'Rack', as, '2026-10-05', wishes);
/** What is cut, as `row: cut × quantity`. */
const cuts = async (...from: Parameters<typeof gather>) =>
  (await gather(...from)).jobs.flatMap(({ lines }) =>
    lines.map(({ row, cutLength, quantity }) => `${row}: ${cutLength} × ${quantity}`),
  );
const left = async (...from: Parameters<typeof gather>) =>
  (await gather(...from)).report.leftOut.map(({ row, reason }) => `${row} ${reason}`);

test('a sheet in inches is cut in millimetres, exactly, then in steps of the bench (1 in = 25.4 mm, NIST SP 811)', async () => {
  const rows = [
    ['Hose', 'Cut length (in)', 'Qty'],
    ['Larch DN 12', '4 1/2', 2],
    ['Larch DN 12', 48, 1],
  ];
  expect(await cuts(rows, {}, {}, { ...settings, step: new Decimal('0.1') })).toEqual(['2: 114.3 × 2', '3: 1219.2 × 1']);
  expect(await cuts(rows)).toEqual(['2: 114 × 2', '3: 1219 × 1']);
});

test('lines that must not be made, are done, planned or hidden, and totals are not cut; each is told', async () => {
  const rows = [
    ['Line', 'Hose', 'Overall (mm)', 'Cut length (mm)', 'Qty', 'Status', 'Check'],
    [1, 'Larch DN 12', 600, 500, 2, '', 'OK'],
    [2, 'Larch DN 12', 3240, 1, 5, '', ''],
    [3, 'Larch DN 12', 600, 500, 1, '', 'families differ: do not assemble'],
    [4, 'Larch DN 12', 600, 500, 1, 'cut', ''],
    [5, 'Larch DN 12', 600, 500, 1, 'planned', ''],
    [6, 'Larch DN 12', 600, 500, 1, '', ''],
    [7, 'Larch DN 12', 600, '', 1, '', ''],
    ['Total', '', '', 2001, 11, '', ''],
  ];
  const details = { hiddenRows: { Jobs: [6] } };
  expect(await cuts(rows, details)).toEqual(['2: 500 × 2']);
  expect(await left(rows, details)).toEqual(['3 stop', '4 stop', '5 done', '6 planned', '7 hidden', '8 stop', '9 total']);
  expect(await cuts(rows, details, { take: new Set(['hidden', 'done', 'planned']) })).toEqual([
    '2: 500 × 2',
    '5: 500 × 1',
    '6: 500 × 1',
    '7: 500 × 1',
  ]);
  expect(leftOutSentences((await gather(rows, details)).report)).toEqual([
    'STOP, left out: row 3 of Jobs: cut length 1 mm cannot belong to an overall length of 3240 mm: correct one of them.',
    'STOP, left out: row 4 of Jobs: its check says: families differ: do not assemble.',
    'STOP, left out: row 8 of Jobs: cut length is blank: fill it in.',
    'Also left out of Jobs: 1 hidden or filtered out (row 7); 1 done (row 5); 1 planned already (row 6); 1 total (row 9).',
  ]);
});

test('of two tables on a sheet each is read with its own columns: no hose is cut at its overall length', async () => {
  const rows = [
    ['Hose', 'Qty', 'Overall length (mm)', 'Cut length (mm)'],
    ['Larch DN 12', 1, 600, 500],
    ['', '', '', ''],
    ['Hose', 'Qty', 'Cut length (mm)', 'Overall length (mm)'],
    ['Larch DN 12', 2, 700, 800],
  ];
  expect(await cuts(rows)).toEqual(['2: 500 × 1']);
  expect(await cuts(rows, {}, { take: new Set(['below']) })).toEqual(['2: 500 × 1', '5: 700 × 2']);
});

test('overall lengths with couplings are not cut, and the column that lacks is offered', async () => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty'],
    ['Larch DN 12', 'x', 'y', 900, 1],
  ];
  const gathered = await gather(rows);
  expect(gathered).toMatchObject({ jobs: [], lacksCutLength: true });
  expect(gathered.report.leftOut).toMatchObject([
    { row: 2, reason: 'problem', sentence: expect.stringMatching(/Week › Columns/) },
  ]);
});

test('hoses alone are cut at their length', async () => {
  const rows = [
    ['Hose', 'Length (mm)', 'Qty'],
    ['Larch DN 12', 900, 3],
  ];
  const gathered = await gather(rows);
  expect(gathered.lacksCutLength).toBe(false);
  expect(gathered.report.taken).toEqual([2]);
});

test('limits come from the sheet, else from the rule of its unit: 1250 mm, DN 12 is 1246 … 1262 (DIN 20066, memory)', async () => {
  const rows = [
    ['Hose', 'Qty', 'Overall length (mm)', 'Bore (mm)', 'Cut length (mm)', 'Shortest (mm)', 'Longest (mm)'],
    ['Larch DN 12', 1, 1250, 12.7, 1168.5, '', ''],
    ['Larch DN 12', 1, 1250, 12.7, 1168.5, 1249, 1251],
    ['Larch DN 12', 1, 1250, 76.2, 1168.5, '', ''],
  ];
  const { jobs } = await gather(rows);
  const [rule, own, none] = jobs[0]!.lines;
  expect([rule!, own!].map(({ limits }) => [`${limits!.shortest}`, `${limits!.longest}`])).toEqual([
    ['1246', '1262'],
    ['1249', '1251'],
  ]);
  expect(none!.note).toMatch(/^length limits not checked: .*DIN 20066 ends at DN 50/);
});

test('where the sheet states no bore, limits follow from that of the catalogue’s hose', async () => {
  const workbook = standingWorkbook({
    Week: [
      ['Hose', 'Qty', 'Overall length (mm)', 'Cut length (mm)', 'Bore (mm)'],
      ['Alder DN 12', 1, 1250, 1190, ''],
      ['Alder DN 12', 1, 1250, 1190, 38.1],
      ['Spruce DN 12', 1, 1250, 1190, ''],
    ],
  });
  await workbook.select({ sheet: 'Week', address: 'A2' });
  const limitsOf = (await readJobs(workbook, { step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! } })).lines.map(
    line => {
      const limits = lengthLimitsOf(line, 'mm');
      return limits && [`${limits.shortest}`, `${limits.longest}`];
    },
  );
  // DIN 20066, from memory: over 630 to 1,250 mm, −4/+12 up to DN 25, −6/+20 above. What stands in the sheet counts first; a hose nobody knows has none.
  expect(limitsOf).toEqual([['1246', '1262'], ['1244', '1270'], undefined]);
});

test('a line that no step of the bench can cut within its limits is left out with why', async () => {
  const rows = [
    ['Hose', 'Qty', 'Overall length (mm)', 'Cut length (mm)', 'Shortest (mm)', 'Longest (mm)'],
    ['Larch DN 12', 1, 1250, 1168.5, 1249.9, 1250.1],
  ];
  expect(await left(rows, {}, {}, { ...settings, step: new Decimal(10) })).toEqual(['2 problem']);
});

test('read again, the same lines are meant, wherever the selection is; what has changed is noticed', async () => {
  const rows = [
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Larch DN 12', 500, 2],
    ['Larch DN 12', 700, 1],
  ];
  const { workbook } = open(rows, {}, 'A3:A3');
  const first = await gatherCuts(workbook, 'Rack', settings, '2026-10-05');
  await workbook.select({ sheet: 'Rack', address: 'A1' });
  expect(isSameWork(first, await gatherAgain(workbook, first, '2026-10-05'))).toBe(true);
  await workbook.write([{ kind: 'values', at: { sheet: 'Rack', address: 'B2' }, values: [[39]] }]);
  expect(isSameWork(first, await gatherAgain(workbook, first, '2026-10-05'))).toBe(false);
});

test('without a table for the rack nothing is planned', async () => {
  const { workbook } = open([
    ['Hose', 'Cut length (mm)', 'Qty'],
    ['Larch DN 12', 500, 2],
  ]);
  await expect(gatherCuts(workbook, 'Jobs', settings, '2026-10-05')).rejects.toThrow(/no table with the columns Hose and Length/);
});
