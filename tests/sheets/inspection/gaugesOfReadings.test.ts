import { NO_CRIMP_FIELDS } from '../../../src/sheets/crimps/crimpFields';
import { gatherRecords, refuseOverdue } from '../../../src/sheets/inspection/gatherRecords';
import { FRESH_FIELDS, NOT_NOTED, type RecordFields } from '../../../src/sheets/inspection/inspectionRecord';
import { workFacts } from '../../../src/sheets/inspection/recordFacts';
import { recordGrowth } from '../../../src/sheets/inspection/recordsLog';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

type Cells = readonly (readonly FakeCell[])[];

const GAUGES: Cells = [
  ['Gauge', 'Kind', 'Checked', 'Check due'],
  ['K-1', 'caliper', '2026-01-10', '2026-07-10'],
  ['K-2', 'caliper', '2026-09-01', '2027-03-01'],
  ['P-7', 'pressure gauge', '2026-09-01', '2027-03-01'],
];
const READ = ['Target (mm)', 'Tol (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'];
const GOOD = [24.9, 0.1, 24.9, 24.9, 24.9, 24.9];

/** Rows of readings, each by its date and by what its columns of gauges hold. */
const readings = (headings: readonly string[], ...rows: readonly (readonly FakeCell[])[]): Cells => [
  ['Line', 'Date', 'Hose', 'Fitting', ...headings, ...READ],
  ...rows.map(([date, ...gauges], index) => [index + 1, date!, 'Hazel', 'S', ...gauges, ...GOOD]),
];

async function recordsOf(sheets: Readonly<Record<string, Cells>>, typed: Partial<RecordFields> = {}) {
  const { workbook } = fakeWorkbook(sheets, { sheet: Object.keys(sheets)[0]!, address: 'A2' });
  const fields = { ...FRESH_FIELDS, ...typed };
  const bench = { unit: 'mm', step: '1' } as const;
  const wishes = { fields, crimps: NO_CRIMP_FIELDS, otherSheet: '', pressureUnit: 'bar', bench, today: '2026-11-03' };
  const gathered = await gatherRecords(workbook, wishes);
  const options = { fields, result: NOT_NOTED, handle: '', source: '', today: '2026-11-03' };
  const written = async (heading: string) => {
    const { appended } = await recordGrowth(workbook, gathered.records, options);
    const [headings, ...rows] = appended!.changes.flatMap(change => (change.kind === 'values' ? change.values : []));
    return rows.map(row => row[headings!.indexOf(heading)]);
  };
  const said = (label: string) => workFacts(gathered.records[0]!, options).find(fact => fact.label === label)?.value;
  return { gathered, written, said };
}

test.each(['Caliper', 'Caliper no.', 'Caliper ID', 'Gauge', 'Gauge no.', 'Measured with'])(
  'the caliper that a row names under %s is recorded, and an overdue one refused as it is typed',
  async heading => {
    const overdue = await recordsOf({ Readings: readings([heading], ['2026-11-02', 'K-1']), Gauges: GAUGES });
    expect(() => refuseOverdue(overdue.gathered)).toThrow(/K-1: overdue by 115 days, since 2026-07-10/);
    const good = await recordsOf({ Readings: readings([heading], ['2026-11-02', 'K-2']), Gauges: GAUGES });
    expect(good.gathered.refusals).toEqual([]);
    expect(await good.written('Caliper')).toEqual(['K-2']);
    expect(good.gathered.records[0]!.crimps[0]!.verdict).toBe('IN SPEC');
    expect([good.said('Caliper'), good.said('Caliper calibrated')]).toEqual(['K-2', '2026-09-01']);
  },
);

test('the day of the reading decides: K-1 was not overdue in June', async () => {
  const june = await recordsOf({ Readings: readings(['Caliper'], ['2026-06-02', 'K-1']), Gauges: GAUGES });
  expect(june.gathered.refusals).toEqual([]);
  const typed = await recordsOf({ Readings: readings([], ['2026-06-02'], ['2026-08-02']), Gauges: GAUGES }, { caliper: 'K-1' });
  expect(typed.gathered.refusals).toEqual(['K-1: overdue by 23 days, since 2026-07-10']);
});

test('what is typed fills the rows that name none, and no others', async () => {
  const sheets = { Readings: readings(['Caliper'], ['2026-11-02', 'K-2'], ['2026-11-02', '']), Gauges: GAUGES };
  const mixed = await recordsOf(sheets, { caliper: 'K-3' });
  expect(await mixed.written('Caliper')).toEqual(['K-2', 'K-3']);
  expect(mixed.gathered.records.map(({ problems }) => problems)).toEqual([
    [],
    ['K-3: not on sheet Gauges, no check of it is known'],
  ]);
  // An overdue one that no row is left for was not used.
  const full = { Readings: readings(['Caliper'], ['2026-11-02', 'K-2']), Gauges: GAUGES };
  expect((await recordsOf(full, { caliper: 'K-1' })).gathered.refusals).toEqual([]);
  expect((await recordsOf(sheets, { caliper: 'K-1' })).gathered.refusals).toEqual(['K-1: overdue by 115 days, since 2026-07-10']);
});

test.each(['Caliper', 'Caliper no.', 'Gauge'])('pieces keep the caliper of their column %s, whatever is typed', async heading => {
  const Pieces = [
    [
      'Piece',
      'Line',
      'Hose',
      'Fitting A',
      heading,
      'Date',
      'Target A (mm)',
      'Tolerance A (mm)',
      'A1 (mm)',
      'A2 (mm)',
      'A3 (mm)',
      'A4 (mm)',
    ],
    ['H-1', 1, 'Hazel', 'S', 'K-2', '2026-11-02', ...GOOD],
    ['H-2', 1, 'Hazel', 'S', '', '2026-11-02', ...GOOD],
  ];
  const typed = await recordsOf({ Pieces, Gauges: GAUGES }, { caliper: 'K-3', caliperChecked: '2026-10-01' });
  expect(await typed.written('Caliper')).toEqual(['K-2', 'K-3']);
  expect(typed.said('Caliper')).toBe('K-2, K-3');
});

test('beside a caliper a Gauge is what its sheet Gauges says, and nothing where nobody says', async () => {
  const both = (gauge: string) => readings(['Caliper', 'Gauge'], ['2026-11-02', 'K-2', gauge]);
  const known = await recordsOf({ Readings: both('P-7'), Gauges: GAUGES });
  expect([await known.written('Caliper'), await known.written('Gauge')]).toEqual([['K-2'], ['P-7']]);
  const unknown = await recordsOf({ Readings: both('P-8') });
  expect([await unknown.written('Caliper'), await unknown.written('Gauge')]).toEqual([['K-2'], ['']]);
  const headed = await recordsOf({ Readings: readings(['Pressure gauge'], ['2026-11-02', 'P-8']) });
  expect([await headed.written('Caliper'), await headed.written('Gauge')]).toEqual([[''], ['P-8']]);
});

test('with both ends in a row each has its caliper; readings down a column name all of theirs', async () => {
  const ends = [
    ['Line', 'Date', 'Caliper A', 'Caliper B', 'Target (mm)', 'Tol (mm)', 'A 1 (mm)', 'A 2 (mm)', 'B 1 (mm)', 'B 2 (mm)'],
    [1, '2026-11-02', 'K-2', 'K-1', 24.9, 0.1, 24.9, 24.9, 24.9, 24.9],
  ];
  const byEnd = await recordsOf({ Readings: ends, Gauges: GAUGES });
  expect(await byEnd.written('Caliper')).toEqual(['K-2', 'K-1']);
  expect(byEnd.gathered.refusals).toEqual(['K-1: overdue by 115 days, since 2026-07-10']);
  const down = [
    ['Crimp', 'Date', 'Instrument ID', 'Target (mm)', 'Tol (mm)', 'Reading (mm)'],
    ...['K-2', 'K-2', 'K-1', 'K-2'].map(name => [1, '2026-11-02', name, 24.9, 0.1, 24.9]),
  ];
  expect((await recordsOf({ Readings: down, Gauges: GAUGES })).gathered.refusals).toEqual([
    'K-1: overdue by 115 days, since 2026-07-10',
  ]);
});

test('columns of readings that are headed Caliper or Gauge stay readings', async () => {
  const four = (headings: readonly string[]): Cells => [
    ['Line', 'Target (mm)', 'Tol (mm)', ...headings],
    [1, 24.9, 0.1, 24.9, 24.9, 24.9, 24.9],
  ];
  const sets = [
    ['Caliper 1', 'Caliper 2', 'Caliper 3', 'Caliper 4'],
    ['Gauge 1', 'Gauge 2', 'Gauge 3', 'Gauge 4'],
    ['Caliper A', 'Caliper B', 'Caliper C', 'Caliper D'],
  ];
  for (const headings of sets) {
    const { gathered, said } = await recordsOf({ Readings: four(headings.map(each => `${each} (mm)`)) });
    expect(gathered.records.map(({ crimps }) => crimps.map(({ readings: all }) => all.length))).toEqual([[4]]);
    expect(said('Caliper')).toBe('');
  }
});
