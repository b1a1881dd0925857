import { blockOf } from '../../../src/workbook/a1';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { isoDate } from '../../../src/core/units/sheetDate';
import { analysisOf } from '../../../src/sheets/analysis/analysisOf';
import { NO_OPTIONS, type CrimpReadOptions } from '../../../src/sheets/crimps/crimpReadOptions';
import { crimpSheetOf, type SheetContent } from '../../../src/sheets/crimps/crimpSheet';
import { crimpReport, crimpRowsOf, whyNotAnalysed } from '../../../src/sheets/crimps/readCrimpRows';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import type { CellValue } from '../../../src/workbook/workbook';
import { gate, registerSheets } from '../machines/registerSheets';
import { sampleSheets } from '../analysis/sampleSheet';
import { sheetContent } from '../table/sheetContent';

type Rows = readonly (readonly CellValue[])[];
interface Details extends Partial<Omit<SheetContent, 'used'>> {
  readonly options?: Partial<CrimpReadOptions>;
  readonly merges?: readonly string[];
  readonly hidden?: readonly number[];
}

function read(rows: Rows, selected = 'A2', details: Details = {}) {
  const { options, merges = [], hidden = [], ...content } = details;
  const layout = {
    merges: merges.map(address => blockOf(address)!),
    hiddenRows: new Set(hidden),
    hiddenColumns: new Set<number>(),
    isHidden: false,
  };
  const sheet = crimpSheetOf({ used: sheetContent(rows), layout, ...content }, blockOf(selected)!);
  const reading = crimpRowsOf(sheet, { ...NO_OPTIONS, ...options });
  const report = crimpReport(reading, whyNotAnalysed);
  return { ...reading, source: sheet, report, message: report.leftOut.map(({ row, reason }) => `${row} ${reason}`) };
}
const problems = ({ report }: ReturnType<typeof read>) => report.leftOut.flatMap(({ sentence }) => sentence ?? []);
const means = ({ rows }: ReturnType<typeof read>) =>
  rows.map(({ row, combination, readings }) => `${row} ${combination}: ${readings.join(' ')}`);

const HEAD = ['Hose', 'Coupling', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)'];
const line = (hose: string, a: CellValue, b: CellValue, target = 25): CellValue[] => [hose, 'cone', a, b, target, 0.1];

describe('which machine', () => {
  const raw = registerSheets(gate);
  const table = (name: string) => raw[name]!.map(row => row.map(cell => (cell === '' ? null : (cell as string | number))));
  const catalogue = readCatalogue({
    hoses: table('Hoses'),
    fittings: table('Fittings'),
    crimps: table('Crimps'),
    machines: table('Machines'),
  });
  const with2 = (headings: string[], cells: CellValue[]) => [
    [...HEAD, ...headings],
    [...line('Larch', 25, 25), ...cells],
  ];
  test.each([
    ['Machine in a table of readings', ['Machine'], ['Press 2'], 'Press 2'],
    ['Machine beside lengths of hoses: what the hose is for', ['Machine', 'Overall length (mm)'], ['Beet lifter', 900], ''],
    ['Machine beside lengths, with names of Machines', ['Machine', 'Overall length (mm)'], ['Gate', 900], 'Gate'],
    ['Crimper wins', ['Machine', 'Crimper'], ['Beet lifter', 'Gate'], 'Gate'],
    ['Crimped on, with names', ['Machine', 'Crimped on'], ['Beet lifter', 'Gate'], 'Gate'],
  ])('%s', (_, headings, cells, machine) => {
    expect(read(with2(headings, cells), 'A2', { catalogue }).rows[0]!.machine).toBe(machine);
  });
  test('Crimped on, with days, is a date', () => {
    const [row] = read(with2(['Crimped on', 'Machine'], ['2026-03-14', 'Gate']), 'A2', { catalogue }).rows;
    expect([isoDate(row!.date!), row!.machine]).toEqual(['2026-03-14', 'Gate']);
  });
  test('a machine of the catalogue whose name is above the table', () => {
    const rows = [['Crimper:', 'Gate'], [], HEAD, line('Larch', 25, 25)];
    expect(read(rows, 'A4', { catalogue, options: { machine: 'Van' } }).rows[0]!.machine).toBe('Gate');
  });
});

describe('every row is read, and what is no crimp is told', () => {
  test('hidden rows are crimps, a total and a remark are none', () => {
    const found = read(
      [HEAD, line('Larch', 25, 25), line('Ash', 25, 25), ['Night shift'], line('Elm', 25, 25), ['Mean', '', 25, 25]],
      'A2',
      { hidden: [2] },
    );
    expect(found.rows.map(({ row }) => row)).toEqual([2, 3, 5]);
    expect(found.message).toEqual(['4 remark', '6 total']);
    expect(found.report.taken).toEqual([2, 3, 5]);
  });

  test('a second table has its own columns; it is told, and read where it is ticked or selected', () => {
    const rows: Rows = [
      HEAD,
      line('Larch', 25, 25.1),
      [],
      ['Target (mm)', 'Tolerance (mm)', 'Hose', 'Coupling', 'Reading 1 (mm)', 'Reading 2 (mm)'],
      [30, 0.1, 'Ash', 'cone', 30, 30.1],
    ];
    const first = read(rows);
    expect(means(first)).toEqual(['2 Larch with cone: 25 25.1']);
    expect(first.report.leftOut).toEqual([{ row: 5, reason: 'below', sentence: 'in the table A4:F5' }]);
    const all = read(rows, 'A2', { options: { take: new Set(['below']) } });
    expect(means(all)).toEqual(['2 Larch with cone: 25 25.1', '5 Ash with cone: 30 30.1']);
    expect(all.message).toEqual([]);
    expect(means(read(rows, 'C5'))).toEqual(['5 Ash with cone: 30 30.1']);
    expect(means(read(rows, 'A2:F5'))).toEqual(means(all));
  });

  test('readings go on below a gap; notes far below are told and not read', () => {
    const found = read([HEAD, line('Larch', 25, 25), [], [], line('Ash', 25, 25), [], [], [], [], [], ['see', 'bay 3', 25, 24]]);
    expect(found.rows.map(({ row }) => row)).toEqual([2, 5]);
    expect(found.message).toEqual(['11 below']);
  });

  test('rows that are yet to be filled in are no crimps, and a row with readings but no name is told', () => {
    const found = read([
      ['No.', ...HEAD],
      [1, ...line('Larch', 25, 25)],
      [2, '', '', 25, 25, 25, 0.1],
      [3, '', '', '', '', '', ''],
    ]);
    expect(problems(found)).toEqual(['it names no hose, coupling or combination: fill that in']);
    expect(found.rows).toHaveLength(2);
  });
});

describe('merged cells', () => {
  test('names and days hold for all their rows', () => {
    const rows = [
      ['Date', ...HEAD],
      ['2026-03-14', ...line('Larch', 25, 25)],
      ['', '', 'cone', 25.1, 25, 25, 0.1],
      ['', '', 'cone', 25, 25.1, 25, 0.1],
    ];
    const found = read(rows, 'A2', { merges: ['A2:A4', 'B2:B4'] });
    expect(found.rows.map(({ hose, date }) => [hose, date && isoDate(date)])).toEqual(
      Array.from({ length: 3 }, () => ['Larch', '2026-03-14']),
    );
  });
  test('a reading, or a target, is refused with its rows', () => {
    const rows = [HEAD, line('Larch', 25, 25), ['Larch', 'cone', '', 25, '', 0.1]];
    const found = read(rows, 'A2', { merges: ['C2:C3'] });
    const sentence = 'reading 1 is merged over rows 2 to 3: unmerge the cells and give each row its own number';
    expect(problems(found)).toEqual([sentence, expect.stringMatching(/target/)]);
    expect(problems(read(rows, 'A2', { merges: ['E2:E3'] }))[0]).toMatch(/^target is merged over rows 2 to 3/);
  });
  test('with one reading a row, target and dial may be merged over the rows of one crimp', () => {
    const rows = [
      ['Hose', 'Coupling', 'Target (mm)', 'Tolerance (mm)', 'Dial', 'Measured (mm)'],
      ['Larch', 'cone', 25, 0.1, 400, 25],
      ['', '', '', '', '', 25.1],
      ['', '', '', '', '', 25],
      ['', '', '', '', '', 25.1],
    ];
    const found = read(rows, 'A2', { merges: ['A2:A5', 'B2:B5', 'C2:C5', 'D2:D5', 'E2:E5'] });
    expect(problems(found)).toEqual([]);
    expect(means(found)).toEqual(['2 Larch with cone: 25 25.1 25 25.1']);
    expect(found.rows[0]!.dial!.value.toNumber()).toBe(400);
  });
});

describe('numbers and units', () => {
  test('a decimal comma with three digits is asked about once, and the answer holds for all readings', () => {
    const rows = [HEAD, line('Larch', '24,905', '24,910')];
    const open = read(rows);
    expect(open.questions.map(({ asked, sentence }) => [asked, sentence])).toEqual([
      ['comma', 'Column C: Reading 1 (mm) has 24,905: is that 24.905 or 24905?'],
    ]);
    const answers = { ...NO_ANSWERS, comma: new Map([['reading 1 (mm)', 'decimal']]) };
    expect(means(read(rows, 'A2', { answers }))).toEqual(['2 Larch with cone: 24.905 24.91']);
  });
  test('one unmistakable decimal comma among the readings says it for all of them', () => {
    const found = read([HEAD, line('Larch', '24,905', '24,9')]);
    expect(found.questions).toEqual([]);
    expect(means(found)).toEqual(['2 Larch with cone: 24.905 24.9']);
  });
  test('an unknown unit is asked about', () => {
    const rows = [HEAD.map(heading => heading.replace('Reading 1 (mm)', 'Reading 1 (ell)')), line('Larch', 25, 25)];
    expect(read(rows).questions.map(({ sentence }) => sentence)).toEqual([
      'Column C: Reading 1 (ell): “ell” is no unit that is known. Which is it?',
    ]);
  });
  test('a target in inches beside readings in mm, and a reading with its own unit', () => {
    const rows = [HEAD.map(heading => heading.replace('Target (mm)', 'Target (in)')), line('Larch', '0.98 in', 24.9, 0.984)];
    // At 25.4 mm an inch: NIST SP 811, appendix B.
    expect(means(read(rows))).toEqual(['2 Larch with cone: 24.892 24.9']);
    expect(read(rows).rows[0]!.target!.value.toString()).toBe('24.9936');
  });
  test('numbers as headings of readings, and no unit beside a target with one', () => {
    const rows = [
      ['Hose', 'Coupling', 'Target (mm)', 'Tolerance', 0, 45, 90, 135],
      ['Larch', 'cone', 25, 0.1, 25, 25.1, 25, 25],
    ];
    const found = read(rows);
    expect([found.questions, means(found)]).toEqual([[], ['2 Larch with cone: 25 25.1 25 25']]);
  });
  test('a number above the table that cannot be read is told', () => {
    const found = read([['Tolerance (mm)', 'about 0.1'], [], HEAD.slice(0, 5), ['Larch', 'cone', 25, 25, 25]], 'A4');
    expect(found.notes).toEqual([expect.stringMatching(/^Above the table: Tolerance \(mm\) is "about 0\.1"/)]);
  });
  test('a day that may be read either way round is noted, and is no day', () => {
    const [row] = read([
      ['Date', ...HEAD],
      ['03/04/2026', ...line('Larch', 25, 25)],
    ]).rows;
    expect([row!.date, row!.notes]).toEqual([undefined, ['date is "03/04/2026": write 2026-04-03 or 2026-03-04']]);
  });
  test('day and time in two columns are one moment', () => {
    const [row] = read([
      ['Time', 'Date', ...HEAD],
      ['14:30', '2026-03-14', ...line('Larch', 25, 25)],
    ]).rows;
    expect(row!.date! - Math.floor(row!.date!)).toBeCloseTo(14.5 / 24, 9);
  });
});

test('both ends in a row: each has its own die, dial and limits, and limits for both hold for both', () => {
  const rows = [
    [
      'Hose',
      'End A',
      'End B',
      'Die A',
      'Die B',
      'Dial (A)',
      'Dial (B)',
      'Target (A) mm',
      'Target B (mm)',
      'Tolerance (mm)',
      'A 1',
      'A 2',
      'B 1',
      'B 2',
    ],
    ['Larch', 'cone', 'elbow', 'D26', 'D22', 400, 300, 25, 30, 0.1, 25, 25, 30, 30],
  ];
  expect(
    read(rows).rows.map(({ end, fitting, die, dial, target, readings }) => [
      end,
      fitting,
      die,
      dial!.value.toNumber(),
      target!.value.toNumber(),
      readings.join(' '),
    ]),
  ).toEqual([
    ['A', 'cone', 'D26', 400, 25, '25 25'],
    ['B', 'elbow', 'D22', 300, 30, '30 30'],
  ]);
});

test('the same headings twice, once for each end: each end has its own target', () => {
  const of = ['Coupling', 'Target (mm)', 'Tolerance (mm)', 'Reading 1 (mm)', 'Reading 2 (mm)'];
  const rows = [
    ['Hose', ...of, ...of],
    ['Larch', 'cone', 25, 0.1, 25, 25, 'elbow', 30, 0.2, 30, 30],
  ];
  const found = read(rows).rows.map(({ end, fitting, target, tolerance }) => [
    end,
    fitting,
    target!.value.toNumber(),
    tolerance!.value.toNumber(),
  ]);
  expect(found).toEqual([
    ['A', 'cone', 25, 0.1],
    ['B', 'elbow', 30, 0.2],
  ]);
});

test('readings that are yet to be entered need a unit, too: it is asked, and nothing is taken for granted', () => {
  const rows = [
    ['Hose', 'Coupling', 'Reading 1', 'Reading 2'],
    ['Larch DN 12', 'Larch cone', '', ''],
  ];
  const found = read(rows);
  expect(found.questions.map(({ sentence, proposal }) => [sentence, proposal])).toEqual([
    ['Column C: Reading 1 has no unit. Which is it?', 'mm'],
  ]);
  expect(found.rows[0]!.problem!.sentence).toBe('the unit of the readings is not known: answer the question about it');
});

test('a mean beside readings without headings that are known is not a reading', () => {
  const rows = [
    ['Name', 'Nominal (mm)', 'Tol. (mm)', 'P', 'Q', 'Mean'],
    ...[25, 25.1, 24.9].map(value => ['Larch', 25, 0.1, value, value, value]),
  ];
  expect(read(rows).rows.map(({ readings }) => readings.length)).toEqual([2, 2, 2]);
});

test('a column End picks the coupling, die and target of its end', () => {
  const rows = [
    ['Hose', 'Fitting A', 'Fitting B', 'End', 'Target A (mm)', 'Target B (mm)', 'Tolerance (mm)', 'Reading 1', 'Reading 2'],
    ['Larch', 'cone', 'elbow', 'A', 25, 30, 0.1, 25, 25],
    ['Larch', 'cone', 'elbow', 'b', 25, 30, 0.1, 30, 30],
  ];
  expect(read(rows).rows.map(({ fitting, target }) => [fitting, target!.value.toNumber()])).toEqual([
    ['cone', 25],
    ['elbow', 30],
  ]);
});

test('names that differ by case or blanks are one combination', () => {
  const { source } = read([HEAD, line('Larch  DN 12', 25, 25), line('larch dn 12 ', 25.1, 25.1)]);
  const { analysis } = analysisOf(source, NO_OPTIONS);
  expect(analysis.machines.map(({ combinations }) => combinations.map(({ name, crimps }) => [name, crimps.length]))).toEqual([
    [['Larch DN 12 with cone', 2]],
  ]);
});

test('tables of two units are analysed in the unit of the first', () => {
  const rows: Rows = [
    HEAD,
    line('Larch', 25, 25.1),
    [],
    HEAD.map(heading => heading.replace('(mm)', '(in)')),
    ['Ash', 'cone', 1, 1, 1, 0.004],
  ];
  const { source } = read(rows);
  const { crimps } = analysisOf(source, { ...NO_OPTIONS, take: new Set(['below']) });
  expect(crimps.map(({ measure, tolerance }) => [measure.mean.toString(), tolerance.toString()])).toEqual([
    ['25.05', '0.1'],
    ['25.4', '0.1016'],
  ]);
});

test.each(['job-sheet.xlsx', 'catalogue.xlsx'])('%s: sheets without readings have none', async file => {
  const sheets = await sampleSheets(file);
  const withReadings = Object.entries(sheets).flatMap(([name, rows]) => {
    const { own } = crimpSheetOf({ used: sheetContent(rows as CellValue[][]) }, blockOf('A2')!);
    return own && own.readings[0] > 0 ? [name] : [];
  });
  expect(withReadings.filter(name => !/record/i.test(name))).toEqual([]);
});

test('lengths that lie near each other are no readings', () => {
  const rows = [
    ['Hose', 'Coupling A', 'Coupling B', 'Overall length (mm)', 'Cut length (mm)'],
    ['Larch', 'cone', 'cone', 2400.5, 2340],
    ['Larch', 'cone', 'cone', 3240, 3179.5],
  ];
  expect([read(rows).tables, read(rows).rows]).toEqual([[], []]);
});
