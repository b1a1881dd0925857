import { Decimal } from '../../../src/core/units/decimal';
import { rackTable, dayOfCell, monthsBetween, readRack } from '../../../src/sheets/rack/rack';
import { jobTable, jobUnit, readCutLines } from '../../../src/sheets/jobs/readCutLines';
import { reelLengths } from '../../../src/sheets/rack/reelLengths';
import { sheetContent } from '../table/sheetContent';

const one = new Decimal(1);

const jobs = sheetContent([
  ['Hose jobs, week 41'],
  ['Overall length and cut-offs are typed'],
  [],
  [
    'Line',
    'Wanted for',
    'Hose',
    'Bore (mm)',
    'Quantity',
    'Overall length (mm)',
    'Cut length (mm)',
    'Shortest (mm)',
    'Longest (mm)',
  ],
  [1, 'Topper lift', 'Larch DN 12', 12.7, 2, 1250, 1168.5, 1246, 1262],
  [2, 'Topper tilt', 'Larch DN 10', 9.5, 2, 985, 934, 981, 997],
  [3, 'Share', 'Larch DN 8', 7.9, '', 640, 570, 636, 652],
  [
    4,
    'Elbow not measured',
    'Larch DN 12',
    12.7,
    1,
    900,
    { error: '#VALUE!', sentence: 'cut-off B is blank: fill it in' },
    '',
    '',
  ],
  [],
  ['', '', '', '', '', '', ''],
]);

test('a job table is found under a title block, its unit read from the heading', () => {
  const table = jobTable(jobs)!;
  expect(table.headingRow).toBe(3);
  expect(jobUnit(table)).toBe('mm');
});

test('rows become lines in whole millimetres; a row that cannot be read says why and the others stay', () => {
  const { lines, problems } = readCutLines(jobTable(jobs)!, 'mm', one);
  expect(lines.map(({ line, label, quantity, cutLength }) => [line, label, quantity, cutLength.toString()])).toEqual([
    ['1', 'Topper lift', 2, '1169'],
    ['2', 'Topper tilt', 2, '934'],
  ]);
  expect(problems).toEqual([
    { row: 7, sentence: 'quantity is blank: fill it in' },
    { row: 8, sentence: 'cut length is #VALUE!: cut-off B is blank: fill it in' },
  ]);
});

test('only picked rows are read', () => {
  expect(readCutLines(jobTable(jobs)!, 'mm', one, new Set([6])).lines.map(line => line.line)).toEqual(['2']);
});

test('lengths are converted into the unit asked for (1 in = 25.4 mm, NIST SP 811)', () => {
  const table = jobTable(
    sheetContent([
      ['Hose', 'Qty', 'Cut length (in)'],
      ['Rowan', 1, '4 1/2'],
    ]),
  )!;
  expect(readCutLines(table, 'mm', new Decimal('0.1')).lines[0]!.cutLength.toString()).toBe('114.3');
});

test('without limits on the sheet those of DIN 20066 serve: 1250 mm, DN 12 is 1246 … 1262 (memory)', () => {
  const table = jobTable(
    sheetContent([
      ['Hose', 'Qty', 'Overall length (mm)', 'Bore (mm)', 'Cut length (mm)'],
      ['Rowan', 1, 1250, 12.7, 1168.5],
    ]),
  )!;
  const [line] = readCutLines(table, 'mm', one).lines;
  expect([line!.limits!.shortest.toString(), line!.limits!.longest.toString()]).toEqual(['1246', '1262']);
});

test('what the check of a row objects to stands beside its line before hose is cut for it', () => {
  const table = sheetContent([
    ['No.', 'Tube', 'Pcs', 'Cut length (mm)', 'Assembly check'],
    [1, 'Larch', 1, 500, 'OK'],
    [2, 'Larch', 1, 500, 'families differ: do not assemble'],
    [3, 'Larch', 1, 500, { error: '#N/A' }],
    [4, 'Larch', 1, 500, ''],
  ]);
  expect(readCutLines(jobTable(table)!, 'mm', one).lines.map(({ note }) => note)).toEqual([
    undefined,
    'its check says: families differ: do not assemble',
    'its check is #N/A',
    undefined,
  ]);
});

test('limits that cannot be known are noted and do not keep a line from being cut', () => {
  const table = jobTable(
    sheetContent([
      ['Hose', 'Qty', 'Overall length (mm)', 'Bore (mm)', 'Cut length (mm)', 'Shortest (mm)', 'Longest (mm)'],
      ['Rowan', 1, 1250, 76.2, 1168.5, { error: '#VALUE!', sentence: 'bore is 76.2 mm: DIN 20066 ends at DN 50' }, ''],
      ['Rowan', 1, 1250, 76.2, 1168.5, '', ''],
    ]),
  )!;
  const { lines, problems } = readCutLines(table, 'mm', one);
  expect(problems).toEqual([]);
  expect(lines.map(line => line.cutLength.toString())).toEqual(['1169', '1169']);
  for (const line of lines) expect(line.note).toMatch(/^length limits not checked: .*DIN 20066 ends at DN 50/);
});

test('a table without a hose column is no job table', () => {
  expect(
    jobTable(
      sheetContent([
        ['Line', 'Cut length (mm)', 'Quantity'],
        [1, 500, 2],
      ]),
    ),
  ).toBeUndefined();
  expect(jobTable(undefined)).toBeUndefined();
});

test('of two tables on a sheet the one around the selected row is read, and it ends where the next begins', () => {
  const two = sheetContent([
    ['Hose', 'Qty', 'Cut length (mm)'],
    ['Rowan', 1, 500],
    [],
    ['Hose', 'Qty', 'Cut length (mm)'],
    ['Alder', 1, 700],
  ]);
  expect(readCutLines(jobTable(two, 1)!, 'mm', one).lines.map(line => line.hose)).toEqual(['Rowan']);
  expect(readCutLines(jobTable(two, 4)!, 'mm', one).lines.map(line => line.hose)).toEqual(['Alder']);
});

const rackSheet = sheetContent(
  [
    ['Hose', 'Length (m)', 'Quantity', 'Place', 'Lot', 'Made'],
    ['Larch DN 12', 40, 2, 'A1', 'L77', 45_992],
    ['Larch DN 12', 3.25, 1, 'A2', '', '2020-06'],
    ['Larch DN 12', 'some', 1, 'A3', '', ''],
    ['Larch DN 12', 2, 1, 'A4', '', 'last spring'],
    ['Larch DN 10', 5, 0, 'A5', '', ''],
  ],
  'Rack',
);

test('a rack in metres is read in millimetres, with place, lot and day of making', () => {
  const { rows, problems } = readRack(rackTable(rackSheet)!, 'mm');
  expect(rows.map(row => [row.length.toString(), row.quantity, row.place, row.lot, row.made])).toEqual([
    ['40000', 2, 'A1', 'L77', '2025-12-01'],
    ['3250', 1, 'A2', '', '2020-06-01'],
  ]);
  expect(problems.map(problem => problem.row)).toEqual([4, 5]);
});

test('days come as serial numbers (45,658 is 1 January 2025, as spreadsheets count), as text or as a year', () => {
  expect([45_658, '2025-01-01', '2025-01', 2025, '2025'].map(dayOfCell)).toEqual(Array(5).fill('2025-01-01'));
  expect(['', 'spring', '2025-13-01', { error: '#N/A' }].map(dayOfCell)).toEqual(['', '', '', '']);
});

test('days that no calendar has are refused; 2024 is a leap year, 2026 and 2100 are none (Gregorian calendar)', () => {
  expect(['2026-02-30', '2026-02-29', '2100-02-29', '2026-04-31'].map(dayOfCell)).toEqual(['', '', '', '']);
  expect(dayOfCell('2024-02-29')).toBe('2024-02-29');
});

test('quarters, as hoses are marked, count from their first day; 1/2026 may be a month and is refused', () => {
  const second = ['2026 Q2', '2026-Q2', 'Q2 2026', 'q2/2026', '2Q26', '2Q2026'];
  expect(second.map(dayOfCell)).toEqual(second.map(() => '2026-04-01'));
  expect(['5Q26', '2026 Q0', '1/2026', '26Q1', 'Q2'].map(dayOfCell)).toEqual(['', '', '', '', '']);
});

test.each([
  ['2020-06-15', '2026-06-15', 72],
  ['2020-06-15', '2026-06-14', 71],
  ['2025-12-31', '2026-01-01', 0],
])('from %s to %s are %i whole months', (from, to, months) => {
  expect(monthsBetween(from, to)).toBe(months);
});

test('reel lengths come from the sheet of hoses, whatever their unit', () => {
  const lengths = reelLengths(
    sheetContent([
      ['Hose', 'Reel length (m)'],
      ['Larch DN 12', 40],
      ['Alder', 'x'],
    ]),
    'mm',
  );
  expect([...lengths].map(([hose, length]) => [hose, length.toString()])).toEqual([['larch dn 12', '40000']]);
});
