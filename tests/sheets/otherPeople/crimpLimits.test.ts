import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { blockOf } from '../../../src/workbook/a1';
import { sheetContent } from '../table/sheetContent';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import type { FakeCell } from '../../workbook/fakeWorkbook';
import type { Rows } from './sheetCase';
import { expectCrimps, type CrimpCase } from './crimpCase';

const R = ['R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'];
const ALDER = ['Alder DN 25', 'Alder cone straight DN 25'];

/** `Min` and `Max` beside readings: of the readings themselves, or their limits. */
const MIN_AND_MAX: readonly CrimpCase[] = [
  {
    name: 'typed, of the row’s own readings: the catalogue’s target and tolerance count',
    rows: [
      ['Hose', 'Coupling', ...R, 'Min', 'Max'],
      [...ALDER, 38.7, 38.71, 38.72, 38.7, 38.7, 38.72],
      [...ALDER, 38.4, 38.41, 38.42, 38.4, 38.4, 38.42],
    ],
    catalogue: readCatalogue(treeTables),
    taken: [
      '2: Alder DN 25 with Alder cone straight DN 25: 38.7 38.71 38.72 38.7 mm, 38.4 ± 0.2',
      '3: Alder DN 25 with Alder cone straight DN 25: 38.4 38.41 38.42 38.4 mm, 38.4 ± 0.2',
    ],
    notes: ['“Min” and “Max”: taken as the smallest and largest'],
  },
  {
    name: 'worked out by formulas, one of which takes too few readings',
    rows: [
      ['Hose', 'Coupling', ...R, 'Min (mm)', 'Max (mm)'],
      [...ALDER, 38.7, 38.71, 38.72, 38.69, { formula: '=MIN($C2:E2)', value: 38.7 }, { formula: '=MAX(C2:F2)', value: 38.72 }],
    ],
    catalogue: readCatalogue(treeTables),
    taken: ['2: Alder DN 25 with Alder cone straight DN 25: 38.7 38.71 38.72 38.69 mm, 38.4 ± 0.2'],
  },
  {
    name: 'rounded, beside LSL and USL on the right',
    rows: [
      ['Job', ...R, 'Minimum', 'Maximum', 'LSL (mm)', 'USL (mm)'],
      [1, 24.91, 24.88, 24.9, 24.93, 24.9, 24.9, 24.8, 25],
      [2, 25.21, 25.18, 25.2, 25.23, 25.2, 25.2, 24.8, 25],
    ],
    taken: ['2: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '3: 25.21 25.18 25.2 25.23 mm, 24.9 ± 0.1'],
  },
  {
    name: 'beside a lower and an upper limit on the right',
    rows: [
      ['Job', ...R, 'Min', 'Max', 'Lower limit', 'Upper limit'],
      [1, 25.21, 25.18, 25.2, 25.23, 25.18, 25.23, 24.8, 25],
    ],
    taken: ['2: 25.21 25.18 25.2 25.23 mm, 24.9 ± 0.1'],
  },
  {
    name: 'limits headed the same on the right of those of the readings',
    rows: [
      ['Job', ...R, 'Min', 'Max', 'Min', 'Max'],
      [1, 25.21, 25.18, 25.2, 25.23, 25.18, 25.23, 24.8, 25],
      [2, 24.91, 24.88, 24.9, 24.93, 24.88, 24.93, 24.8, 25],
    ],
    taken: ['2: 25.21 25.18 25.2 25.23 mm, 24.9 ± 0.1', '3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
  },
  {
    name: 'of the readings, with target and tolerance above the table',
    rows: [
      ['Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      [],
      ['Crimp', ...R, 'Min', 'Max'],
      [1, 25.21, 25.18, 25.2, 25.23, 25.18, 25.23],
    ],
    selected: 'A4',
    taken: ['4: 25.21 25.18 25.2 25.23 mm, 24.9 ± 0.1'],
  },
  {
    name: 'of the readings, and nothing else: no limits',
    rows: [
      ['Crimp', ...R, 'Smallest', 'Largest'],
      [1, 25.21, 25.18, 25.2, 25.23, 25.18, 25.23],
    ],
    taken: [],
    leftOut: ['2 problem: target is not known'],
  },
  {
    name: 'of both ends in a row, each beside its readings',
    rows: [
      ['Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      ['Assembly', 'A 1', 'A 2', 'Min A', 'Max A', 'B 1', 'B 2', 'Min B', 'Max B'],
      ['0412-1', 25.2, 25.21, 25.2, 25.21, 24.9, 24.93, 24.9, 24.93],
    ],
    selected: 'A3',
    taken: ['3 A: 25.2 25.21 mm, 24.9 ± 0.1', '3 B: 24.9 24.93 mm, 24.9 ± 0.1'],
  },
  {
    name: 'of a reading a row, in the first row of each crimp',
    rows: [
      ['Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      ['Crimp no.', 'Measured (mm)', 'Min', 'Max'],
      [1, 25.21, 25.18, 25.21],
      ['', 25.18, '', ''],
      ['', 25.2, '', ''],
      ['', 25.2, '', ''],
      [2, 24.9, 24.88, 24.93],
      ['', 24.93, '', ''],
      ['', 24.88, '', ''],
      ['', 24.9, '', ''],
    ],
    selected: 'A3',
    taken: ['3: 25.21 25.18 25.2 25.2 mm, 24.9 ± 0.1', '7: 24.9 24.93 24.88 24.9 mm, 24.9 ± 0.1'],
  },
  {
    name: 'limits that hold for several crimps',
    rows: [
      ['Job', 'Min (mm)', 'Max (mm)', ...R],
      [1, 24.8, 25, 24.91, 24.88, 24.9, 24.93],
      [2, 24.8, 25, 24.9, 24.91, 24.92, 24.93],
    ],
    taken: ['2: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '3: 24.9 24.91 24.92 24.93 mm, 24.9 ± 0.1'],
  },
  {
    name: 'limits of crimps that wait for their readings',
    rows: [
      ['Hose', 'Min (mm)', 'Max (mm)', ...R],
      ['Alder DN 12', 24.8, 25, 24.91, 24.88, 24.9, 24.93],
      ['Larch DN 16', 30.1, 30.3, '', '', '', ''],
    ],
    taken: ['2: Alder DN 12: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
    waiting: ['3 Row 3'],
  },
  {
    name: 'limits that contradict the catalogue: asked',
    rows: [
      ['Hose', 'Coupling', 'Min (mm)', 'Max (mm)', ...R],
      [...ALDER, 38.4, 39, 38.7, 38.71, 38.72, 38.7],
      [...ALDER, 38.4, 39, 38.4, 38.41, 38.42, 38.41],
    ],
    catalogue: readCatalogue(treeTables),
    taken: [],
    leftOut: ['2 problem: whether Min and Max are its limits', '3 problem: whether Min and Max are its limits'],
    asks: [
      'Columns C: Min (mm) and D: Max (mm): are they the limits of the diameter, or the smallest and largest reading of each crimp?',
    ],
  },
  {
    name: 'the same, answered: limits, as the sheet says',
    rows: [
      ['Hose', 'Coupling', 'Min (mm)', 'Max (mm)', ...R],
      [...ALDER, 38.4, 39, 38.7, 38.71, 38.72, 38.7],
    ],
    catalogue: readCatalogue(treeTables),
    answers: [['meaning', 'Min (mm)', 'limits']],
    taken: ['2: Alder DN 25 with Alder cone straight DN 25: 38.7 38.71 38.72 38.7 mm, 38.7 ± 0.3'],
  },
  {
    name: 'the same, answered: readings',
    rows: [
      ['Hose', 'Coupling', 'Min (mm)', 'Max (mm)', ...R],
      [...ALDER, 38.4, 39, 38.7, 38.71, 38.72, 38.7],
    ],
    catalogue: readCatalogue(treeTables),
    answers: [['meaning', 'Min (mm)', 'readings']],
    taken: ['2: Alder DN 25 with Alder cone straight DN 25: 38.7 38.71 38.72 38.7 mm, 38.4 ± 0.2'],
  },
  {
    name: 'a single crimp between them, and nothing else: asked',
    rows: [
      ['Job', ...R, 'Min', 'Max'],
      [1, 24.91, 24.88, 24.9, 24.93, 24.8, 25],
    ],
    taken: [],
    leftOut: ['2 problem: whether Min and Max are its limits'],
    asks: ['are they the limits'],
  },
  {
    name: 'a single crimp between them, target and tolerance above the table: these count',
    rows: [
      ['Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      ['Job', ...R, 'Min', 'Max'],
      [1, 24.91, 24.88, 24.9, 24.93, 24.7, 25.2],
    ],
    selected: 'A3',
    taken: ['3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
  },
  {
    name: 'Min and Max that a hand calls limits are limits',
    rows: [
      ['Job', ...R, 'Min', 'Max'],
      [1, 24.91, 24.88, 24.9, 24.93, 24.88, 24.93],
    ],
    answers: [
      ['role', 'Min', 'smallest'],
      ['role', 'Max', 'largest'],
    ],
    taken: ['2: 24.91 24.88 24.9 24.93 mm, 24.905 ± 0.025'],
  },
];

test.each(MIN_AND_MAX)('Min and Max: $name', async from => expectCrimps(from));

/** A tolerance of 0.3 mm from limit to limit beside a target of 24.9 mm. */
const withWidth = (heading: string, tolerance: FakeCell = 0.3): Rows => [
  ['Job', 'Target (mm)', heading, ...R],
  [1, 24.9, tolerance, 24.91, 24.88, 24.9, 24.93],
];
const TAKEN = '24.91 24.88 24.9 24.93 mm, 24.9 ± ';

test.each([
  'Tolerance (total)',
  'Tolerance (full width, mm)',
  'Tolerance (mm, total)',
  'Tolerance (total) (mm)',
  'Tolerance width (mm)',
  'Tol. band (mm)',
  'Total tolerance (mm)',
  'Tolerance, total mm',
  'Tolerance total',
])('%s: the whole width, half of it counts either way, and that is said', async heading =>
  expectCrimps({
    name: heading,
    rows: withWidth(heading),
    taken: [`2: ${TAKEN}0.15`],
    notes: [`“${heading}” is the whole width, so half of it counts either way.`],
  }),
);

const WIDTHS: readonly CrimpCase[] = [
  {
    name: 'above the table: said and halved',
    rows: [['Target (mm)', 24.9, 'Tolerance (total)', 0.3, 'mm'], [], ['Job', ...R], [1, 24.91, 24.88, 24.9, 24.93]],
    selected: 'A4',
    taken: [`4: ${TAKEN}0.15`],
    notes: ['Above the table: “Tolerance (total)” is the whole width'],
  },
  {
    name: 'beside a column of ±: that counts',
    rows: [
      ['Job', 'Target (mm)', 'Tolerance width (mm)', '± mm', ...R],
      [1, 24.9, 0.3, 0.15, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [`2: ${TAKEN}0.15`],
    notes: [],
  },
  {
    name: 'a cell with ± in a column of widths contradicts its heading',
    rows: withWidth('Tolerance width (mm)', '± 0.15'),
    taken: [],
    leftOut: ['2 problem: the heading says the whole width, the cell says ±'],
  },
  {
    name: 'a range may be either: refused, with what to do',
    rows: withWidth('Tolerance range (mm)'),
    taken: [],
    leftOut: ['2 problem: “Tolerance range (mm)” may mean ± or the whole width: choose which under “Columns read”'],
  },
  {
    name: 'a range in brackets is no unit either',
    rows: withWidth('Tolerance (range, mm)'),
    taken: [],
    leftOut: ['2 problem: “Tolerance (range, mm)” may mean ± or the whole width'],
  },
  {
    name: 'a range that a hand calls the whole width',
    rows: withWidth('Tolerance (range, mm)'),
    answers: [['role', 'Tolerance (range, mm)', 'toleranceWidth']],
    taken: [`2: ${TAKEN}0.15`],
  },
  {
    name: 'a tolerance in a unit that is not known: its own question, not that of the readings',
    rows: withWidth('Tolerance (ell)'),
    taken: [],
    leftOut: ['2 problem: column Tolerance (ell) has no unit that is known'],
    asks: ['“ell” is no unit that is known'],
  },
];

test.each(WIDTHS)('a tolerance from limit to limit: $name', async from => expectCrimps(from));

/** Four equal readings, and what stands beside them. */
const beside = (headings: readonly string[], ...lines: readonly (readonly [reading: number, ...beside: FakeCell[]])[]): Rows => [
  ['Job', ...headings, ...R],
  ...lines.map(([reading, ...cells], index): FakeCell[] => [index + 1, ...cells, reading, reading, reading, reading]),
];
const read = (row: number, reading: number, limits: string) =>
  `${row}: ${reading} ${reading} ${reading} ${reading} mm, ${limits}`;

/** Limits of the diameter beside a target or a tolerance in the same row. */
const CONTRADICTIONS: readonly CrimpCase[] = [
  {
    name: 'a nominal that is not in the middle of its limits: 24.77 is below the smallest, 25.08 within them',
    rows: beside(['Nominal (mm)', 'Min dia (mm)', 'Max dia (mm)'], [24.77, 24.9, 24.8, 25.1], [25.08, 24.9, 24.8, 25.1]),
    taken: [read(2, 24.77, '24.95 ± 0.15'), read(3, 25.08, '24.95 ± 0.15')],
  },
  {
    name: 'a nominal in their middle',
    rows: beside(['Nominal (mm)', 'Min dia (mm)', 'Max dia (mm)'], [24.9, 24.9, 24.8, 25]),
    taken: [read(2, 24.9, '24.9 ± 0.1')],
  },
  {
    name: 'a nominal beyond them',
    rows: beside(['Nominal (mm)', 'Min dia (mm)', 'Max dia (mm)'], [24.9, 25.9, 24.8, 25]),
    taken: [],
    leftOut: ['2 problem: the target 25.9 (column Nominal (mm)) is not within the limits 24.8 … 25: correct one of them'],
  },
  {
    name: 'a tolerance that is not half of their distance, without and with a target; and one that is',
    rows: beside(
      ['Target (mm)', 'Tol (mm)', 'LSL (mm)', 'USL (mm)'],
      [24.92, '', 0.1, 24.85, 25.15],
      [24.92, 24.9, 0.1, 24.85, 24.95],
      [24.92, 24.9, 0.1, 24.8, 25],
      [24.92, 24.95, 0.1, 24.8, 25],
    ),
    taken: [read(4, 24.92, '24.9 ± 0.1')],
    leftOut: [
      '2 problem: the tolerance 0.1 (column Tol (mm)) does not fit the limits 24.85 … 25.15: correct one of them',
      '3 problem: the tolerance 0.1 (column Tol (mm)) does not fit the limits 24.85 … 24.95: correct one of them',
      '5 problem: 24.95 ± 0.1 are not the limits 24.8 … 25: correct one of them',
    ],
  },
];

test.each(CONTRADICTIONS)('limits beside a target or a tolerance: $name', async from => expectCrimps(from));

const THOU = ['R1', 'R2', 'R3', 'R4'];

/** Units that are seldom met. */
const UNITS: readonly CrimpCase[] = [
  {
    name: 'target and tolerance in thousandths: the readings are, too',
    rows: [
      ['Job', 'Target (thou)', 'Tol (thou)', ...THOU],
      [1, 980, 4, 981, 979, 980, 982],
    ],
    taken: ['2: 0.981 0.979 0.98 0.982 in, 0.98 ± 0.004'],
  },
  {
    name: 'only the tolerance says thousandths: asked, and they are among the answers',
    rows: [
      ['Job', 'Target', 'Tol (thou)', ...THOU],
      [1, 980, 4, 981, 979, 980, 982],
    ],
    taken: [],
    leftOut: ['2 problem: unit of the readings'],
    asks: ['R1 has no unit. Which is it? → mm / cm / m / in / ft / yd / thou'],
  },
  {
    name: 'the same, answered once for all',
    rows: [
      ['Job', 'Target', 'Tol (thou)', ...THOU],
      [1, 980, 4, 981, 979, 980, 982],
    ],
    answers: [['unit', 'R1', 'thou']],
    taken: ['2: 0.981 0.979 0.98 0.982 in, 0.98 ± 0.004'],
  },
  {
    name: '+/- mm is the tolerance',
    rows: [
      ['Job', 'Target (mm)', '+/- mm', ...R],
      [1, 24.9, 0.1, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [`2: ${TAKEN}0.1`],
  },
  {
    name: 'Tol. +/- mm is, too',
    rows: [
      ['Job', 'Target (mm)', 'Tol. +/- mm', ...R],
      [1, 24.9, 0.1, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [`2: ${TAKEN}0.1`],
  },
  {
    name: '+/- over a row of units is the tolerance',
    rows: [
      ['Job', 'Target', '+/-', 'R1', 'R2', 'R3', 'R4'],
      ['', 'mm', 'mm', 'mm', 'mm', 'mm', 'mm'],
      [1, 24.9, 0.1, 24.91, 24.88, 24.9, 24.93],
    ],
    selected: 'A3',
    taken: [`3: ${TAKEN}0.1`],
  },
];

test.each(UNITS)('units: $name', async from => expectCrimps(from));

test('thousandths are proposed where the numbers are of their size', () => {
  const rows = [
    ['Job', 'Target', 'Tol (thou)', ...THOU],
    [1, 980, 4, 981, 979, 980, 982],
  ];
  const { tables } = crimpSheetOf({ used: sheetContent(rows) }, blockOf('A2')!);
  expect(tables[0]!.questions.map(({ proposal }) => proposal)).toEqual(['thou']);
});

const PERCENT = 'a percentage has no unit';

/** Tolerances that cannot be used: each says what to do. */
const REFUSED: readonly CrimpCase[] = [
  {
    name: 'a percentage is no tolerance in millimetres',
    rows: [
      ['Job', 'Target (mm)', 'Tolerance', ...R],
      [1, 24.9, 0.01, 24.91, 24.88, 24.9, 24.93],
    ],
    details: { formats: { Bench: { C2: '0.0%' } } },
    taken: [],
    leftOut: [`2 problem: tolerance is 1 %: ${PERCENT}`],
  },
  {
    name: 'nor is one above the table',
    rows: [['Target (mm)', 24.9, 'Tolerance (mm)', 0.01], [], ['Job', ...R], [1, 24.91, 24.88, 24.9, 24.93]],
    details: { formats: { Bench: { D1: '0.0%' } } },
    selected: 'A4',
    taken: [],
    leftOut: ['4 problem: tolerance is not known'],
    notes: [PERCENT],
  },
  {
    name: 'a tolerance for each way in two columns',
    rows: [
      ['Job', 'Target (mm)', 'Tol + (mm)', 'Tol − (mm)', ...R],
      [1, 24.9, 0.1, 0.2, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [],
    leftOut: ['2 problem: “Tol + (mm)” and “Tol − (mm)”, one for each way, cannot be used: use two columns of limits'],
  },
  {
    name: 'the same with a hyphen for the minus and without units',
    rows: [
      ['Job', 'Target (mm)', 'Tol +', 'Tol -', ...R],
      [1, 24.9, 0.1, 0.2, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [],
    leftOut: ['2 problem: “Tol +” and “Tol -”, one for each way, cannot be used: use two columns of limits'],
  },
  {
    name: 'the same with the signs in brackets',
    rows: [
      ['Job', 'Target (mm)', 'Tol (+)', 'Tol (-, mm)', ...R],
      [1, 24.9, 0.1, 0.2, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [],
    leftOut: ['2 problem: “Tol (+)” and “Tol (-, mm)”, one for each way, cannot be used: use two columns of limits'],
  },
  {
    name: 'the same beside a catalogue, whose tolerance is not taken instead',
    rows: [
      ['Hose', 'Coupling', 'Tol +', 'Tol -', ...R],
      [...ALDER, 0.05, 0.1, 38.41, 38.42, 38.4, 38.42],
    ],
    catalogue: readCatalogue(treeTables),
    taken: [],
    leftOut: ['2 problem: tolerance is not known: “Tol +” and “Tol -”, one for each way'],
  },
  {
    name: 'a tolerance for each way in a cell',
    rows: [
      ['Job', 'Target (mm)', 'Tolerance (mm)', ...R],
      [1, 24.9, '+0.10/-0.20', 24.91, 24.88, 24.9, 24.93],
      [2, 24.9, '+0.1 -0.2 mm', 24.91, 24.88, 24.9, 24.93],
    ],
    taken: [],
    leftOut: [
      '2 problem: tolerance is "+0.10/-0.20": one for each way cannot be used: use two columns of limits',
      '3 problem: use two columns of limits',
    ],
  },
  {
    name: 'target and tolerance in one cell',
    rows: [
      ['Job', 'Target (mm)', ...R],
      [1, '18.6 ± 0.15', 18.61, 18.6, 18.62, 18.6],
      [2, '18.6 +/- 0.15 mm', 18.61, 18.6, 18.62, 18.6],
    ],
    taken: [],
    leftOut: [
      '2 problem: target is "18.6 ± 0.15": write it in two columns, one of the target, one of the tolerance ±',
      '3 problem: write it in two columns',
    ],
  },
];

test.each(REFUSED)('refused: $name', async from => expectCrimps(from));

const SIX = [24.91, 24.88, 24.9, 24.93, 24.92, 24.89];
const LIMITS_ABOVE = ['Target (mm)', 24.9, 'Tolerance (mm)', 0.1];

/** A reading a row under a number of the crimp, in every row or only in the first. */
const numbered = (heading: string, isEvery: boolean): Rows => [
  LIMITS_ABOVE,
  [heading, 'Measured (mm)'],
  ...[701, 702].flatMap(number => SIX.map((reading, at) => [at === 0 || isEvery ? number : '', reading])),
];

test.each([
  ['Serial no.', true],
  ['Serial no.', false],
  ['Crimp no.', true],
  ['Crimp no.', false],
])('a reading a row under %s, in every row: %s, all six are of one crimp', async (heading, isEvery) =>
  expectCrimps({
    name: heading,
    rows: numbered(heading, isEvery),
    selected: 'A3',
    taken: ['3', '9'].map(row => `${row}: ${SIX.join(' ')} mm, 24.9 ± 0.1`),
  }),
);

test('a reading a row under a job: of one job several crimps may be made', async () =>
  expectCrimps({
    name: 'job',
    rows: [LIMITS_ABOVE, ['Job', 'Measured (mm)'], ...[...SIX, 24.9, 24.9].map(reading => [701, reading])],
    selected: 'A3',
    taken: ['3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '7: 24.92 24.89 24.9 24.9 mm, 24.9 ± 0.1'],
  }));

test('an average without a heading beside readings without headings is no reading', async () =>
  expectCrimps({
    name: 'average',
    rows: [
      LIMITS_ABOVE,
      ['Job', 'Readings (mm)', '', '', '', ''],
      [1, 24.91, 24.88, 24.9, 24.93, { formula: '=AVERAGE(B3:E3)', value: 24.905 }],
    ],
    selected: 'A3',
    taken: ['3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
  }));
