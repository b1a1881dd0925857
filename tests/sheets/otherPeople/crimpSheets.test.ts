import type { Decimal } from '../../../src/core/units/decimal';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { blockOf } from '../../../src/workbook/a1';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { crimpRowsOf } from '../../../src/sheets/crimps/readCrimpRows';
import { judgeCrimpRow } from '../../../src/sheets/crimps/judgeCrimpRow';
import { fakeWorkbook } from '../../workbook/fakeWorkbook';
import { treeTables } from '../../core/catalogue/treeCatalogue';
import { expectCrimps, message, type CrimpCase } from './crimpCase';

/** Sheets of crimp readings as other workshops keep them; what each must come to was written down before it was read. */
const SHEETS: readonly CrimpCase[] = [
  {
    name: 'readings headed 1 2 3 4, target and tolerance above the table',
    rows: [
      ['Target', 24.9, 'mm', '', ''],
      ['Tolerance', '± 0.1', 'mm', '', ''],
      [],
      ['Crimp', 1, 2, 3, 4],
      [1, 24.91, 24.88, 24.9, 24.93],
      [2, 24.85, 24.86, 24.9, 24.9],
    ],
    selected: 'B5',
    taken: ['5: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '6: 24.85 24.86 24.9 24.9 mm, 24.9 ± 0.1'],
  },
  {
    name: 'diameters in inches, the tolerance in thousandths',
    rows: [
      ['Hose', 'Fitting', 'Target (in)', 'Tol (thou)', '1 (in)', '2 (in)', '3 (in)', '4 (in)'],
      ['Alder DN 12', 'Straight', 0.98, 4, 0.981, 0.979, 0.98, 0.982],
    ],
    taken: ['2: Alder DN 12 with Straight: 0.981 0.979 0.98 0.982 in, 0.98 ± 0.004'],
  },
  {
    name: 'readings by angle, limits of the diameter instead of a tolerance, mean and spread beside, an average below',
    rows: [
      ['Hose', 'Fitting', 'Min. dia. (mm)', 'Max. dia. (mm)', '0°', '45°', '90°', '135°', 'Mean', 'Spread'],
      ['Alder DN 12', 'Straight', 24.8, 25, 24.91, 24.88, 24.9, 24.93, 24.905, 0.05],
      ['Alder DN 12', 'Straight', 24.8, 25, 24.95, 24.96, 24.99, 24.98, 24.97, 0.04],
      ['Average', '', '', '', 24.93, 24.92, 24.945, 24.955, 24.9375, 0.045],
    ],
    taken: [
      '2: Alder DN 12 with Straight: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1',
      '3: Alder DN 12 with Straight: 24.95 24.96 24.99 24.98 mm, 24.9 ± 0.1',
    ],
    leftOut: ['4 total'],
  },
  {
    name: 'one heading over four readings that reach into column M: its letter is no metre',
    rows: [
      ['Date', 'WO', 'Hose', 'Dash', 'Coupling', 'Die', 'Dial', 'Spec (in)', '+/- (in)', 'Caliper (in)', '', '', '', 'By'],
      [46_266, 1001, 'Birch', -6, 'Cone', 'D19', 210, 0.765, 0.005, 0.764, 0.765, 0.7655, 0.766, 'RM'],
      [46_266, 1002, 'Birch', -8, 'Cone', 'D23', 225, 0.905, 0.005, 0.911, 0.912, 0.9115, 0.911, 'RM'],
    ],
    details: { formats: { Bench: { 'A2:A3': 'm/d/yyyy' } } },
    taken: [
      '2: Birch -6 with Cone: 0.764 0.765 0.7655 0.766 in, 0.765 ± 0.005',
      '3: Birch -8 with Cone: 0.911 0.912 0.9115 0.911 in, 0.905 ± 0.005',
    ],
  },
  {
    name: 'readings headed by flats, decimal commas, limits of the diameter',
    rows: [
      ['Date', 'Combination', 'Flat 1 (mm)', 'Flat 2 (mm)', 'Flat 3 (mm)', 'Flat 4 (mm)', 'Low limit', 'High limit'],
      ['5.10.2026', 'Alder with cone', '27,30', '27,35', '27,40', '27,41', '27,23', '27,47'],
      ['6.10.2026', 'Alder with cone', '27,31', '27,35', '27,40', '', '27,23', '27,47'],
    ],
    taken: ['2: Alder with cone: 27.3 27.35 27.4 27.41 mm, 27.35 ± 0.12'],
    leftOut: ['3 problem: reading 4'],
  },
  {
    name: 'readings lettered A to D are four of one crimp, not two of each end',
    rows: [
      ['Job', 'Target (mm)', 'Tol. (mm)', 'Reading A', 'Reading B', 'Reading C', 'Reading D'],
      [7, 24.9, 0.1, 24.91, 24.88, 24.9, 24.93],
    ],
    taken: ['2: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
  },
  {
    name: 'readings in inches, the catalogue in millimetres',
    rows: [
      ['Hose', 'Fitting', 'm1 (in)', 'm2 (in)', 'm3 (in)', 'm4 (in)'],
      ['Alder DN 25', 'Alder cone straight DN 25', 1.512, 1.511, 1.513, 1.512],
    ],
    catalogue: readCatalogue(treeTables),
    taken: ['2: Alder DN 25 with Alder cone straight DN 25: 1.512 1.511 1.513 1.512 in, 1.511811 ± 0.007874'],
  },
  {
    name: 'several blocks, each with its own target above: the one that is selected is read with its own, the other is told',
    rows: [
      ['Straight', 'Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      ['Crimp', 'M1', 'M2', 'M3', 'M4'],
      [1, 24.91, 24.88, 24.9, 24.93],
      [],
      ['Elbow', 'Target (mm)', 30.2, 'Tolerance (mm)', 0.15],
      ['Crimp', 'M1', 'M2', 'M3', 'M4'],
      [1, 30.21, 30.18, 30.2, 30.23],
    ],
    selected: 'B7',
    taken: ['7: 30.21 30.18 30.2 30.23 mm, 30.2 ± 0.15'],
    leftOut: ['3 below: in the table'],
  },
  {
    name: 'the same with the tick: each with its own target',
    rows: [
      ['Straight', 'Target (mm)', 24.9, 'Tolerance (mm)', 0.1],
      ['Crimp', 'M1', 'M2', 'M3', 'M4'],
      [1, 24.91, 24.88, 24.9, 24.93],
      [],
      ['Elbow', 'Target (mm)', 30.2, 'Tolerance (mm)', 0.15],
      ['Crimp', 'M1', 'M2', 'M3', 'M4'],
      [1, 30.21, 30.18, 30.2, 30.23],
    ],
    selected: 'B7',
    take: ['below'],
    taken: ['3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '7: 30.21 30.18 30.2 30.23 mm, 30.2 ± 0.15'],
  },
  {
    name: 'tolerances with their sign, spread allowed, units in the cells',
    rows: [
      ['No.', 'Crimp Ø', 'Tol. ±', 'Max. spread', 'Ø1', 'Ø2', 'Ø3', 'Ø4'],
      [1, '24.9 mm', '±0.1 mm', '0.08 mm', '24.91 mm', '24,88 mm', '24.9mm', '24.93 mm'],
      [2, '24.9 mm', '+/- 0.1 mm', '0.08 mm', '24.91 mm', '24.88 mm', '24.9 mm', '24.93 mm'],
    ],
    taken: ['2: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1, spread 0.08', '3: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1, spread 0.08'],
  },
  {
    name: 'units in the cells, one reading without: asked',
    rows: [
      ['No.', 'Target', 'Tol.', 'Ø1', 'Ø2'],
      [1, '24.9 mm', '±0.1 mm', '24.91 mm', '24.88 mm'],
      [2, '24.9 mm', '±0.1 mm', '24.91 mm', '24.88'],
    ],
    taken: [],
    leftOut: ['2 problem: answer the question', '3 problem: answer the question'],
    asks: ['Ø2 has no unit. Which is it?'],
  },
  {
    name: 'commas that may mean either in all readings: one question for all',
    rows: [
      ['Hose', 'Target (mm)', 'Tolerance (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
      ['Alder DN 12', 24.9, 0.1, '24,905', '24,911', '24,896', '24,902'],
    ],
    taken: [],
    leftOut: ['2 problem: 24.905 or 24905'],
    asks: ['R1 (mm) has 24,905: is that 24.905 or 24905? → 24.905 / 24905'],
  },
  {
    name: 'the same, answered',
    rows: [
      ['Hose', 'Target (mm)', 'Tolerance (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
      ['Alder DN 12', 24.9, 0.1, '24,905', '24,911', '24,896', '24,902'],
    ],
    answers: [['comma', 'R1 (mm)', 'decimal']],
    taken: ['2: Alder DN 12: 24.905 24.911 24.896 24.902 mm, 24.9 ± 0.1'],
  },
  {
    name: 'no unit anywhere: asked, with the likely one proposed',
    rows: [
      ['Hose', 'Target', 'Tolerance', 'R1', 'R2', 'R3', 'R4'],
      ['Alder DN 12', 0.9803, 0.004, 0.981, 0.98, 0.982, 0.98],
    ],
    taken: [],
    leftOut: ['2 problem: unit'],
    asks: ['R1 has no unit. Which is it?'],
  },
  {
    name: 'both ends in a row: end A over four columns, end B over four, headings in two rows',
    rows: [
      ['Assembly', 'Target (mm)', 'Tolerance (mm)', 'End A', '', '', '', 'End B', '', '', ''],
      ['', '', '', 1, 2, 3, 4, 1, 2, 3, 4],
      ['0412-1', 24.9, 0.1, 24.91, 24.88, 24.9, 24.93, 24.95, 24.9, 24.9, 24.93],
      ['0412-2', 24.9, 0.1, '', '', '', '', '', '', '', ''],
    ],
    details: { merges: { Bench: ['D1:G1', 'H1:K1', 'A1:A2', 'B1:B2', 'C1:C2'] } },
    selected: 'D3',
    taken: ['3 A: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '3 B: 24.95 24.9 24.9 24.93 mm, 24.9 ± 0.1'],
    waiting: ['4 assembly 0412-2', '4 assembly 0412-2'],
  },
  {
    name: 'a reading a row: names stand once, the next name begins the next crimp',
    rows: [
      ['Hose', 'Fitting', 'Pos.', 'Measured (mm)', 'Target (mm)', 'Tol (mm)'],
      ['Alder DN 12', 'Straight', 1, 24.91, 24.9, 0.1],
      ['', '', 2, 24.88, '', ''],
      ['', '', 3, 24.9, '', ''],
      ['', '', 4, 24.93, '', ''],
      ['Larch DN 16', 'Straight', 1, 30.21, 30.2, 0.15],
      ['', '', 2, 30.18, '', ''],
      ['', '', 3, 30.2, '', ''],
    ],
    taken: ['2: Alder DN 12 with Straight: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1'],
    leftOut: ['6 problem: 3 of 4 readings'],
  },
  {
    name: 'slips of the hand, errors, zeros and gaps: each named, the others read',
    rows: [
      ['Line', 'Hose', 'Target (mm)', 'Tolerance (mm)', 'R1 (mm)', 'R2 (mm)', 'R3 (mm)', 'R4 (mm)'],
      [1, 'Alder DN 12', 24.9, 0.1, 249.1, 24.88, 24.9, 24.93],
      [2, 'Alder DN 12', 24.9, 0.1, 24.9, { formula: '=1/0', value: { error: '#DIV/0!' } }, 24.9, 24.93],
      [3, 'Alder DN 12', 24.9, 0.1, 24.9, 0, 24.9, 24.93],
      [4, 'Alder DN 12', 24.9, 0.1, 24.9, '', 24.9, 24.93],
      [5, 'Alder DN 12', 24.9, 9, 24.9, 24.9, 24.9, 24.93],
      [6, '', 24.9, 0.1, 24.9, 24.9, 24.9, 24.93],
      [7, 'Alder DN 12', 24.9, 0.1, 24.9, 'n/a', 24.9, 24.93],
      [8, 'Alder DN 12', 24.9, 0.1, 24.9, 24.9, 24.9, 24.9],
      [9, 'Alder DN 12', 24.9, 0.1, 24.9, 46_089, 24.9, 24.93],
      [10, 'Alder DN 12', 24.9, 0.1, 24.9, 24.9, '', ''],
    ],
    taken: ['9: Alder DN 12: 24.9 24.9 24.9 24.9 mm, 24.9 ± 0.1'],
    leftOut: [
      '2 problem: 249.1',
      '3 problem: #DIV/0!',
      '4 problem: blank or zero',
      '5 problem: is blank',
      '6 problem: tolerance',
      '7 problem: names no hose',
      '8 problem: n/a',
      '10 problem: date',
      '11 problem: is blank',
    ],
  },
  {
    name: 'hidden rows are read all the same, a merged reading is refused, merged names hold',
    rows: [
      ['Hose', 'Coupling', 'Nominal (mm)', 'Tol. (mm)', 'Caliper 1 (mm)', 'Caliper 2 (mm)'],
      ['Alder DN 12', 'Straight', 24.9, 0.1, 24.9, 24.92],
      ['', '', 24.9, 0.1, 24.88, 24.92],
      ['', 'Elbow 90', 24.9, 0.1, 24.9, 24.92],
      ['', '', 24.9, 0.1, '', 24.9],
    ],
    details: { merges: { Bench: ['A2:A5', 'B2:B3', 'B4:B5', 'E4:E5'] }, hiddenRows: { Bench: [2] } },
    taken: [
      '2: Alder DN 12 with Straight: 24.9 24.92 mm, 24.9 ± 0.1',
      '3: Alder DN 12 with Straight: 24.88 24.92 mm, 24.9 ± 0.1',
    ],
    leftOut: ['4 problem: merged over rows 4 to 5', '5 problem: merged over rows 4 to 5'],
  },
  {
    name: 'upper and lower deviations beside the target are not limits of the diameter',
    rows: [
      ['Hose', 'Target (mm)', 'Upper (mm)', 'Lower (mm)', 'R1 (mm)', 'R2 (mm)'],
      ['Alder DN 12', 24.9, 0.1, -0.1, 24.9, 24.92],
    ],
    taken: [],
    leftOut: ['2 problem: smallest diameter is -0.1'],
  },
  {
    name: 'target in millimetres beside readings in inches, both said',
    rows: [
      ['Piece', 'Spec mm', '± mm', 'Reading 1, in', 'Reading 2, in', 'Reading 3, in', 'Reading 4, in'],
      [1, 25.4, 0.254, 1.001, 1, 0.999, 1],
    ],
    taken: ['2: 1.001 1 0.999 1 in, 1 ± 0.01'],
  },
];

test.each(SHEETS)('$name', async from => expectCrimps(from));

test('the verdict follows the limits of the diameter: their middle, and half of their distance', async () => {
  const rows = [
    ['Hose', 'Smallest (mm)', 'Largest (mm)', 'R1 (mm)', 'R2 (mm)'],
    ['Alder DN 12', 24.8, 25, 25, 25],
    ['Alder DN 12', 24.8, 25, 25.01, 25],
  ];
  const { workbook } = fakeWorkbook({ Bench: rows }, { sheet: 'Bench', address: 'A2' });
  const sheet = crimpSheetOf({ used: (await workbook.used('Bench'))! }, blockOf('A2')!);
  expect(crimpRowsOf(sheet).rows.map(row => judgeCrimpRow(row, row.readings as Decimal[]))).toMatchObject([
    { verdict: 'IN SPEC' },
    { verdict: 'LOOSE' },
  ]);
});

/** Four readings of one crimp under headings of all kinds. */
test.each([
  [['1', '2', '3', '4']],
  [['1 (mm)', '2 (mm)', '3 (mm)', '4 (mm)']],
  [['1.', '2.', '3.', '4.']],
  [['#1', '#2', '#3', '#4']],
  [['d1', 'd2', 'd3', 'd4']],
  [['D1 (mm)', 'D2 (mm)', 'D3 (mm)', 'D4 (mm)']],
  [['Measurement 1', 'Measurement 2', 'Measurement 3', 'Measurement 4']],
  [['Reading 1 mm', 'Reading 2 mm', 'Reading 3 mm', 'Reading 4 mm']],
  [['1st', '2nd', '3rd', '4th']],
  [['1st reading', '2nd reading', '3rd reading', '4th reading']],
  [['Position 1', 'Position 2', 'Position 3', 'Position 4']],
  [['Flat 1-5', 'Flat 2-6', 'Flat 3-7', 'Flat 4-8']],
  [['a', 'b', 'c', 'd']],
  [['A', 'B', 'C', 'D']],
  [['0 deg', '45 deg', '90 deg', '135 deg']],
  [['Ø 0°', 'Ø 45°', 'Ø 90°', 'Ø 135°']],
  [['at 0°', 'at 45°', 'at 90°', 'at 135°']],
  [['Actual (mm)', 'Actual (mm)', 'Actual (mm)', 'Actual (mm)']],
  [['Measured', '', '', '']],
  [['Crimp dia. 1', 'Crimp dia. 2', 'Crimp dia. 3', 'Crimp dia. 4']],
  [['x', 'y', 'z', 'w']],
])('four readings under %j', async headings => {
  const { workbook } = fakeWorkbook(
    {
      Bench: [
        ['Job', 'Target (mm)', 'Tolerance (mm)', ...headings, 'Mean', 'Verdict'],
        [1, 24.9, 0.1, 24.91, 24.88, 24.9, 24.93, 24.905, 'IN SPEC'],
        [2, 24.9, 0.1, 24.81, 24.98, 24.9, 24.93, 24.905, 'IN SPEC'],
      ],
    },
    { sheet: 'Bench', address: 'D2' },
  );
  const sheet = crimpSheetOf({ used: (await workbook.used('Bench'))! }, blockOf('D2')!);
  const read = crimpRowsOf(sheet);
  expect(read.questions).toEqual([]);
  expect(message(read)).toEqual(['2: 24.91 24.88 24.9 24.93 mm, 24.9 ± 0.1', '3: 24.81 24.98 24.9 24.93 mm, 24.9 ± 0.1']);
});
