import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { NO_CRIMP_FIELDS, readOptionsOf, type CrimpFields } from '../../../src/sheets/crimps/crimpFields';
import { crimpSheetOf } from '../../../src/sheets/crimps/crimpSheet';
import { crimpRowsOf } from '../../../src/sheets/crimps/readCrimpRows';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { gate, registerSheets } from '../machines/registerSheets';
import { processorTime } from '../../processorTime';

const sheets = registerSheets(gate);
const raw = (name: string) => sheets[name]!.map(row => row.map(cell => (cell === '' ? null : (cell as string | number))));
const catalogue = readCatalogue({
  hoses: raw('Hoses'),
  fittings: raw('Fittings'),
  crimps: raw('Crimps'),
  machines: raw('Machines'),
});

/** Rows as Entry reads them; a heading without a unit is answered with mm. */
async function rowsOf(rows: readonly (readonly FakeCell[])[], fields: Partial<CrimpFields> = {}) {
  const used = (await fakeWorkbook({ Sheet: rows }, { sheet: 'Sheet', address: 'A1' }).workbook.used('Sheet'))!;
  const answers = { ...NO_ANSWERS, unit: new Map([['measured', 'mm']]) };
  const sheet = crimpSheetOf({ used, catalogue, answers }, { row: used.values.length - 1, column: 0, rows: 1, columns: 1 });
  return crimpRowsOf(sheet, readOptionsOf({ ...NO_CRIMP_FIELDS, ...fields })).rows;
}

const numbers = (sourced: Record<string, { value: unknown; from: string } | undefined>) =>
  Object.fromEntries(Object.entries(sourced).map(([name, found]) => [name, found && [Number(found.value), found.from]]));

test('what the sheet does not say comes from the catalogue and its table Machines', async () => {
  const [row] = await rowsOf([
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (mm)', 'Reading 2 (mm)'],
    [1, 'Larch DN 12', 'Larch cone', 'Gate', '', ''],
  ]);
  const { target, tolerance, wantedDial, step, lowest, highest, largestMove } = row!;
  expect(numbers({ target, tolerance, wantedDial, step, lowest, highest, largestMove })).toEqual({
    target: [25, 'Catalogue'],
    tolerance: [0.1, 'Catalogue'],
    wantedDial: [410, 'Machines'],
    step: [0.02, 'Machines'],
    lowest: [100, 'Machines'],
    highest: [900, 'Machines'],
    largestMove: [12, 'Machines'],
  });
  expect(row).toMatchObject({ die: '', wantedDie: 'D23', problem: undefined });
  expect(row!.cells.map(({ address }) => address)).toEqual(['E2', 'F2']);
});

test('columns win over what stands above the table, that over the catalogue, that over the user’s settings', async () => {
  const [row] = await rowsOf(
    [
      ['Change per digit (mm)', 0.03, 'Lowest dial (digits)', 150],
      [],
      ['Line', 'Hose', 'Fitting', 'Machine', 'Dial', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Lowest'],
      [1, 'Larch DN 12', 'Larch cone', 'Gate', 405, '', '', 25.2, 160],
    ],
    { step: '0.5', largestSpread: '0.25' },
  );
  const { target, dial, step, lowest, highest, largestSpread } = row!;
  expect(numbers({ target, dial, step, lowest, highest, largestSpread })).toEqual({
    target: [25.2, 'column Target (mm)'],
    dial: [405, 'column Dial'],
    step: [0.03, 'above the table'],
    lowest: [160, 'column Lowest'],
    highest: [900, 'Machines'],
    largestSpread: [0.25, 'your setting'],
  });
  expect(row!.notes).toEqual(['The target here is 25.2 (column Target (mm)), the Catalogue says 25: the sheet’s counts.']);
});

test('diameters of a catalogue in mm are turned into the inches of the sheet', async () => {
  const [row] = await rowsOf([
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (in)', 'Reading 2 (in)'],
    [1, 'Larch DN 12', 'Larch cone', 'Gate', '', ''],
  ]);
  // 25 mm / 25.4 (NIST SP 811, appendix B), not rounded.
  expect(row!.target!.value.times('25.4').minus(25).abs().lt('1e-25')).toBe(true);
  expect(row!.step!.value.times('25.4').minus('0.02').abs().lt('1e-25')).toBe(true);
});

test.each([
  ['no target', ['', 0.1], /target is not known: no crimp data for Larch DN 12 with Larch elbow: do not assemble/],
  ['no tolerance', [25, ''], /tolerance is not known/],
  ['a tolerance that cannot belong to the target', [25, 5], /cannot belong to the target 25/],
  ['a target that is text', ['about 25', 0.1], /target is "about 25"/],
  ['a target that is a date', [45000, 0.1], /target is 45000: that looks like a date/],
  ['an error value', [{ error: '#N/A' }, 0.1], /target is #N\/A/],
])('readings cannot be taken in a row with %s', async (_, [target, tolerance], sentence) => {
  const [row] = await rowsOf([
    ['Hose', 'Fitting', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)'],
    ['Larch DN 12', 'Larch elbow', '', '', target as FakeCell, tolerance as FakeCell],
  ]);
  expect(row!.problem?.sentence).toMatch(sentence);
});

test('line and assembly have columns of their own; cells with formulas are known', async () => {
  const [row] = await rowsOf([
    ['Assembly no.', 'Line', 'Hose', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)', 'Dial'],
    ['H3-117', 4, 'Larch DN 12', { formula: '=1+1', value: 2 }, '', 25, 0.1, { formula: '=A1', value: 400 }],
  ]);
  expect(row).toMatchObject({ title: 'Line 4, assembly H3-117', locked: expect.stringMatching(/^D2 hold formulas/) });
  expect(row!.fields.dial).toBeUndefined();
});

test('ten thousand rows are read in a moment', async () => {
  const row = [1, 'Larch DN 12', 'Larch cone', 'Gate', '', '', '', ''];
  const rows = [
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Reading 3 (mm)', 'Reading 4 (mm)'],
    ...Array.from({ length: 10_000 }, () => row),
  ];
  const spent = processorTime();
  expect(await rowsOf(rows)).toHaveLength(10_000);
  expect(spent()).toBeLessThan(8000);
});

test('one reading a row: positions on the crimp are no lines, and rows go on below a remark before anything is measured', async () => {
  const rows = (sample: number) => [0, 45, 90, 135].map(place => [sample, 'Larch', 'cone', place, '', 25, 0.1]);
  const read = await rowsOf([
    ['Sample', 'Hose', 'Fitting', 'Pos.', 'Measured (mm)', 'Target', 'Tol ±'],
    ...rows(1),
    ...rows(2),
    [],
    ['Night shift'],
    [],
    ...rows(3),
  ]);
  expect(read.map(({ row, line, cells, problem }) => [row, line, cells.length, problem])).toEqual([
    [2, '1', 4, undefined],
    [6, '2', 4, undefined],
    [13, '3', 4, undefined],
  ]);
});
