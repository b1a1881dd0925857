import { Decimal } from '../../../src/core/units/decimal';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { blockOf } from '../../../src/workbook/a1';
import type { CellValue } from '../../../src/workbook/workbook';
import { NO_OPTIONS, type CrimpReadOptions } from '../../../src/sheets/crimps/crimpReadOptions';
import { isUnmeasured } from '../../../src/sheets/crimps/crimpRow';
import { crimpSheetOf, type SheetContent } from '../../../src/sheets/crimps/crimpSheet';
import { crimpReport, crimpRowsOf, measuredCrimps, whyNotAnalysed } from '../../../src/sheets/crimps/readCrimpRows';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { sheetContent } from '../table/sheetContent';
import { sampleSheets } from '../analysis/sampleSheet';

interface Wishes extends Partial<CrimpReadOptions> {
  readonly catalogue?: Catalogue;
  readonly content?: Partial<SheetContent>;
}

/** Reads a sheet from A1 as the pane does it, with one cell of it selected; a question about the unit is answered as proposed. */
function read(rows: readonly (readonly CellValue[])[], selected = 'A2', wishes: Wishes = {}) {
  const { catalogue, content, ...options } = wishes;
  const given = { used: sheetContent(rows), catalogue, ...content };
  const look = (answers = NO_ANSWERS) => {
    const sheet = crimpSheetOf({ answers, ...given }, blockOf(selected)!);
    return { sheet, reading: crimpRowsOf(sheet, { ...NO_OPTIONS, ...options }) };
  };
  const first = look();
  const open = first.reading.questions.find(({ asked }) => asked === 'unit');
  const unit = new Map(open ? [[open.heading.toLowerCase(), open.proposal!]] : []);
  const { sheet, reading } = open ? look({ ...NO_ANSWERS, unit }) : first;
  const { leftOut } = crimpReport(reading, whyNotAnalysed);
  return {
    ...reading,
    questions: first.reading.questions,
    leftOut,
    own: sheet.own!,
    layout: sheet.own!.layout,
    crimps: measuredCrimps(reading, reading.unit),
    waiting: reading.rows.filter(isUnmeasured),
    problems: leftOut.filter(({ reason }) => reason === 'problem'),
  };
}

const readingsOf = ({ columns }: ReturnType<typeof read>['own']) =>
  Object.entries(columns).flatMap(([role, column]) => (/^reading\d/.test(role) ? [column] : []));
const deviations = (crimps: ReturnType<typeof read>['crimps']) => crimps.map(({ measure }) => measure.deviation.toNumber());

test('a crimp a row, four readings side by side, target and tolerance in columns', () => {
  const { crimps, problems, layout, unit } = read([
    [
      'Hose',
      'Coupling',
      'End',
      'Machine',
      'Die',
      'Dial (digits)',
      'Reading 1 (mm)',
      'Reading 2 (mm)',
      'Reading 3 (mm)',
      'Reading 4 (mm)',
      'Target (mm)',
      'Tolerance ± (mm)',
    ],
    ['Larch DN 12', '24° cone', 'A', 'Gate', 'D23', 412, 27.36, 27.31, 27.38, 27.35, 27.35, 0.12],
    ['Larch DN 12', '24° cone', 'B', 'Gate', 'D23', 412, 27.4, '27.34', 27.37, 27.41, 27.35, 0.12],
  ]);
  expect(problems).toEqual([]);
  expect([unit, layout]).toEqual(['mm', 'row']);
  expect(deviations(crimps)).toEqual([0, 0.03]);
  expect(crimps[1]).toMatchObject({
    row: 3,
    combination: 'Larch DN 12 with 24° cone',
    end: 'B',
    machine: 'Gate',
    die: 'D23',
  });
  expect(crimps[1]!.cells.map(({ address }) => address)).toEqual(['G3', 'H3', 'I3', 'J3']);
});

test('both ends in a row: each end has its own fitting, target and readings, and its own problems', () => {
  const { crimps, problems, layout } = read([
    [
      'Assembly',
      'Hose',
      'Fitting A',
      'Fitting B',
      'Target A',
      'Target B',
      'Tolerance',
      'A 1',
      'A 2',
      'A 3',
      'A 4',
      'B 1',
      'B 2',
      'B 3',
      'B 4',
    ],
    [1, 'Larch DN 12', 'cone', 'flange', 27.35, 28.1, 0.12, 27.3, 27.3, 27.4, 27.4, 28.2, 28.2, 28.2, 28.2],
    [2, 'Larch DN 12', 'cone', 'flange', 27.35, 28.1, 0.12, 27.3, 27.3, 27.4, 27.4, 28.2, '', 28.2, 28.2],
  ]);
  expect(layout).toBe('ends');
  expect(crimps.map(({ row, end, combination }) => [row, end, combination])).toEqual([
    [2, 'A', 'Larch DN 12 with cone'],
    [2, 'B', 'Larch DN 12 with flange'],
    [3, 'A', 'Larch DN 12 with cone'],
  ]);
  expect(deviations(crimps)).toEqual([0, 0.1, 0]);
  expect(problems).toEqual([
    { row: 3, reason: 'problem', sentence: 'end B: reading 2 is blank: measure it, or clear the others', at: 'M3' },
  ]);
});

test('one reading a row: names left blank hold on, four rows make a crimp', () => {
  const { crimps, problems, layout } = read([
    ['Combination', 'Measured', 'Target', 'Tol.'],
    ['Larch with cone', 27.3, 27.35, 0.12],
    ['', 27.3, '', ''],
    ['', 27.4, '', ''],
    ['', 27.4, '', ''],
    ['Larch with cone', 27.5, 27.35, 0.12],
    ['Larch with cone', 27.5, 27.35, 0.12],
    ['Larch with cone', 27.5, 27.35, 0.12],
    ['Larch with cone', 27.5, 27.35, 0.12],
    ['Rowan with cone', 36.4, 36.4, 0.12],
    ['Rowan with cone', 36.4, 36.4, 0.12],
  ]);
  expect(layout).toBe('column');
  expect(crimps.map(({ row, readings }) => [row, readings.length])).toEqual([
    [2, 4],
    [6, 4],
  ]);
  expect(deviations(crimps)).toEqual([0, 0.15]);
  expect(problems.map(({ sentence }) => sentence)).toEqual([
    'crimp has 2 of 4 readings: measure the others, or say under Limits and machine how many rows make a crimp',
  ]);
});

test('one reading a row with numbers of the readings: a number that comes again begins a crimp', () => {
  const numbered = [1, 2, 3, 1, 2, 3].map((place, i) => ['Larch', place, 27.3 + i / 100, 27.35, 0.12]);
  const { crimps } = read([['Combination', 'Reading no.', 'Reading', 'Target', 'Tolerance'], ...numbered], 'A2', {
    readingsACrimp: 3,
  });
  expect(crimps.map(({ row, readings }) => [row, readings.length])).toEqual([
    [2, 3],
    [5, 3],
  ]);
});

test('bare numbers without headings: target and tolerance are typed', () => {
  const typed = { target: new Decimal('27.35'), tolerance: new Decimal('0.12') };
  const { crimps, problems } = read(
    [
      ['', '', '', ''],
      [27.36, 27.31, 27.38, 27.35],
      [27.4, 27.34, 27.37, 27.41],
    ],
    'A3',
    { typed },
  );
  expect(problems).toEqual([]);
  expect(crimps.map(({ row, combination, target }) => [row, combination, target.toString()])).toEqual([
    [2, 'All crimps', '27.35'],
    [3, 'All crimps', '27.35'],
  ]);
});

test('inches: fractions as text, unit of the size of the numbers, limits instead of a target', () => {
  const { crimps, unit } = read([
    ['Combination', '0°', '45°', '90°', '135°', 'Smallest', 'Largest'],
    ['Alder', 1.077, 1.078, '1 5/64', 1.079, 1.07, 1.086],
  ]);
  expect(unit).toBe('in');
  expect(crimps[0]!.target.toString()).toBe('1.078');
  expect(crimps[0]!.tolerance.toString()).toBe('0.008');
  expect(crimps[0]!.measure.mean.toString()).toBe('1.07803125');
});

const larch = readCatalogue({
  hoses: [
    ['Hose', 'Family', 'Bore (mm)', 'Working pressure (bar)'],
    ['Larch', 'L', 12.7, 275],
  ],
  fittings: [
    ['Fitting', 'Family', 'End form', 'Bore (mm)', 'Cut-off (mm)'],
    ['cone', 'L', '24° cone', 12.7, 30],
    ['elbow', 'L', '24° cone', 12.7, 30],
  ],
  crimps: [
    ['Hose', 'Fitting', 'Die', 'Dial', 'Crimp diameter (in)', 'Tolerance (in)', 'Largest spread (in)'],
    ['Larch', 'cone', 'D26', 400, 0.9843, 0.004, 0.01],
  ],
});

test('the catalogue gives what the sheet does not, and its refusal is the row’s problem', () => {
  const { rows, crimps, waiting, problems } = read(
    [
      ['Hose', 'Fitting', 'Reading 1 (mm)', 'Reading 2 (mm)'],
      ['Larch', 'cone', 25, 25],
      ['Larch', 'cone', '', ''],
      ['Larch', 'elbow', 25, 25],
    ],
    'A2',
    { catalogue: larch },
  );
  expect([crimps.map(({ row }) => row), rows[0]!.target?.from]).toEqual([[2], 'Catalogue']);
  // 0.9843 in at 25.4 mm (NIST SP 811, appendix B), exactly.
  expect(waiting.map(({ row, target }) => [row, target!.value.toString()])).toEqual([[3, '25.00122']]);
  expect(problems.map(({ sentence }) => sentence)).toEqual([
    'target is not known: no crimp data for Larch with elbow: do not assemble',
  ]);
});

test.each([
  ['a slipped decimal point', [273.6, 27.3, 27.4, 27.4], 'reading 1 is 273.6: it cannot belong to the target 27.35', 'B2'],
  ['a word', [27.3, 'loose', 27.4, 27.4], 'reading 2 is "loose": enter a number', 'C2'],
  ['an error', [27.3, 27.3, { error: '#REF!' }, 27.4], 'reading 3 is #REF!: correct that cell first', 'D2'],
  ['a zero', [27.3, 27.3, 27.4, 0], 'reading 4 is blank or zero: fill it in', 'E2'],
  ['a negative', [-27.3, 27.3, 27.4, 27.4], 'reading 1 is -27.3: it must be more than 0', 'B2'],
])('%s among the readings is refused, with the cell to go to', (_, readings, sentence, address) => {
  const good = ['Larch', 27.3, 27.3, 27.4, 27.4, 27.35, 0.12];
  const { problems } = read([
    ['Combination', 'Reading 1', 'Reading 2', 'Reading 3', 'Reading 4', 'Target', 'Tolerance'],
    ['Larch', ...readings, 27.35, 0.12],
    good,
    good,
  ]);
  expect(problems).toHaveLength(1);
  expect(problems[0]!.sentence).toContain(sentence);
  expect(problems[0]!.at).toBe(address);
});

const inches = (mean: number) => [mean, mean + 0.001, mean, mean - 0.001];

// Whichever row is selected: above the gap, or below it.
test.each(['C5', 'C11', 'A12'])(
  'a blank row, a remark, a slip and a row of means end no table, and are no crimps: %s',
  selected => {
    const { crimps, waiting, problems } = read(
      [
        ['Crimp log, bay 3'],
        ['Target (in)', 1.062, 'Tolerance (in)', 0.005],
        [],
        ['Serial', 'Type', 'OD 1', 'OD 2', 'OD 3', 'OD 4'],
        ['S1', 'Ash', ...inches(1.062)],
        ['S2', 'Elm', 1.062, 'n/a', 1.062, 1.062],
        ['S3', 'Ash', 1.062, 0, 1.062, 1.062],
        [],
        ['Night shift'],
        [],
        ['S4', 'Elm', ...inches(1.063)],
        ['S5', 'Elm', '', '', '', ''],
        [],
        ['Mean', '', 1.0623, 1.0627, 1.0623, 1.062],
        [],
        [],
        ['Machine', 'Step', 'Dial', 'Note'],
        ['Gate', 1.2, 1.3, 1.1],
      ],
      selected,
    );
    expect(crimps.map(({ row, combination, readings }) => [row, combination, readings.length])).toEqual([
      [5, 'Ash', 4],
      [11, 'Elm', 4],
    ]);
    expect(waiting.map(({ row }) => row)).toEqual([12]);
    expect(problems.map(({ row, sentence }) => [row, sentence!.split(':')[0]])).toEqual([
      [6, 'reading 2 is "n/a"'],
      [7, 'reading 2 is blank or zero'],
    ]);
  },
);

test('headings in other words: the nominal diameter is not a reading', () => {
  const row = (side: string, place: number) => [3, 'Larch DN 10', '24° cone', side, place, 21.52, 21.5, 0.2, 'Gate'];
  const { crimps, layout } = read([
    ['Job no.', 'Hose type', 'End fitting', 'Side', 'Pos.', 'Measured Ø (mm)', 'Nominal Ø', 'Tol ±', 'Crimper'],
    ...['A', 'B'].flatMap(side => [0, 45, 90, 135].map(place => row(side, place))),
  ]);
  expect(layout).toBe('column');
  expect(crimps.map(({ row: at, end, line, machine, readings }) => [at, end, line, machine, readings.length])).toEqual([
    [2, 'A', '3', 'Gate', 4],
    [6, 'B', '3', 'Gate', 4],
  ]);
});

test('columns without headings that are known: two slips among the readings hide no column', () => {
  const good = (name: string) => [name, 27.3, 27.31, 27.32, 27.29];
  const { own } = read([['Name', 'P', 'Q', 'S', 'T'], ...['a', 'b', 'c', 'd', 'e', 'f'].map(good), ['g', 27.3, 0, 27.3, 273.1]]);
  expect(readingsOf(own)).toEqual([1, 2, 3, 4]);
});

test.each([
  ['14.03.2026', 14],
  ['2026/3/14', 14],
  ['2026-03-14', 14],
  // March 4th or April 3rd: nobody can say.
  ['03/04/2026', undefined],
  ['31.02.2026', undefined],
])('a date as text: %s', (text, day) => {
  const { crimps } = read([
    ['Date', 'Combination', 'Reading 1', 'Reading 2', 'Target', 'Tolerance'],
    [text, 'Larch', 27.3, 27.3, 27.3, 0.12],
  ]);
  // 2026-03-01 is day 46082 of a sheet.
  expect(crimps[0]!.date).toBe(day === undefined ? undefined : 46_081 + day);
});

test('every week of the measurement book: all crimps, none left over; its tolerance stands above the table', async () => {
  const sheets = await sampleSheets('measurement-book.xlsx');
  for (const [name, rows] of Object.entries(sheets).filter(([sheet]) => sheet.startsWith('Week'))) {
    for (const selected of ['A1', 'F12', 'P9']) {
      const { crimps, problems, own } = read(rows as CellValue[][], selected);
      expect([name, selected, problems]).toEqual([name, selected, []]);
      expect(own.table.block.row).toBe(6);
      expect(crimps).toHaveLength(name === 'Week 42' ? 5 : 30);
      expect(crimps.every(({ tolerance, date }) => tolerance.eq('0.12') && date !== undefined)).toBe(true);
    }
  }
});

test('the bench record of the job sheet: crimps, rows that wait, a decimal comma among the readings', async () => {
  const sheets = await sampleSheets('job-sheet.xlsx');
  const { crimps, waiting, problems } = read(sheets['Bench record'] as CellValue[][], 'G14');
  expect(crimps.length).toBeGreaterThan(5);
  expect(crimps.every(({ hose, fitting }) => hose !== '' && fitting !== '')).toBe(true);
  expect(crimps.every(({ largestSpread }) => largestSpread!.eq('0.25'))).toBe(true);
  expect(problems.map(({ sentence }) => sentence!.split(': ')[0])).toEqual(['reading 4 is blank']);
  // One of them has no target: there is nothing to analyse yet, and Entry says what it lacks.
  expect(waiting.map(({ problem }) => problem?.sentence.split(':')[0])).toEqual([undefined, 'target is not known']);
});

test('readings headed a, b, c and d are four readings, not a diameter in the column d', () => {
  const { crimps, problems, layout, own } = read([
    ['Hose', 'Fitting', 'Nominal', 'Tolerance', 'a', 'b', 'c', 'd', 'Remark'],
    ['Larch DN 12', 'cone', 27.35, 0.12, 27.3, 27.3, 27.4, 27.4, ''],
    ['Larch DN 12', 'cone', 27.35, 0.12, 27.4, 27.4, 27.4, 27.4, 'warm'],
  ]);
  expect(problems).toEqual([]);
  expect([layout, readingsOf(own)]).toEqual(['row', [4, 5, 6, 7]]);
  expect(deviations(crimps)).toEqual([0, 0.05]);
});

test('a single column headed d holds one reading a row', () => {
  const { own, layout } = read([
    ['Crimp', 'Nominal', 'Tolerance', 'd'],
    [1, 27.35, 0.12, 27.3],
    [1, 27.35, 0.12, 27.4],
  ]);
  expect([layout, readingsOf(own)]).toEqual(['column', [3]]);
});
