import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { readSlots, type EntryDefaults } from '../../../src/sheets/crimps/readSlots';
import { locateMeasurements } from '../../../src/sheets/crimps/locateMeasurements';
import { measurementUnit } from '../../../src/sheets/crimps/measurementUnit';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';
import { gate, registerSheets } from '../machines/registerSheets';

const NO_DEFAULTS: EntryDefaults = {
  machine: '',
  tolerance: '',
  largestSpread: '',
  step: '',
  lowest: '',
  highest: '',
  largestMove: '',
};

const sheets = registerSheets(gate);
const raw = (name: string) => sheets[name]!.map(row => row.map(cell => (cell === '' ? null : (cell as string | number))));
const catalogue = readCatalogue({
  hoses: raw('Hoses'),
  fittings: raw('Fittings'),
  crimps: raw('Crimps'),
  machines: raw('Machines'),
});

async function slotsOf(rows: readonly (readonly FakeCell[])[], defaults: Partial<EntryDefaults> = {}, withCatalogue = true) {
  const used = (await fakeWorkbook({ Sheet: rows }, { sheet: 'Sheet', address: 'A1' }).workbook.used('Sheet'))!;
  const located = locateMeasurements(used, { row: used.values.length - 1, column: 0, rows: 1, columns: 1 })!;
  const unit = measurementUnit(used, located.table, located.proposed.columns);
  return readSlots({
    used,
    ...located,
    unit,
    defaults: { ...NO_DEFAULTS, ...defaults },
    catalogue: withCatalogue ? catalogue : undefined,
  });
}

const numbers = (sourced: Record<string, { value: unknown; from: string } | undefined>) =>
  Object.fromEntries(Object.entries(sourced).map(([name, found]) => [name, found && [Number(found.value), found.from]]));

test('what the sheet does not say comes from the catalogue and its table Machines', async () => {
  const [slot] = await slotsOf([
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (mm)', 'Reading 2 (mm)'],
    [1, 'Larch DN 12', 'Larch cone', 'Gate', '', ''],
  ]);
  const { target, tolerance, dial, step, lowest, highest, largestMove } = slot!;
  expect(numbers({ target, tolerance, dial, step, lowest, highest, largestMove })).toEqual({
    target: [25, 'Catalogue'],
    tolerance: [0.1, 'Catalogue'],
    dial: [410, 'Machines'],
    step: [0.02, 'Machines'],
    lowest: [100, 'Machines'],
    highest: [900, 'Machines'],
    largestMove: [12, 'Machines'],
  });
  expect(slot).toMatchObject({ die: 'D23', dieStanding: '', problem: undefined, cells: ['E2', 'F2'] });
});

test('columns win over what stands above the table, that over the catalogue, that over the user’s settings', async () => {
  const [slot] = await slotsOf(
    [
      ['Change per digit (mm)', 0.03, 'Lowest dial (digits)', 150],
      [],
      ['Line', 'Hose', 'Fitting', 'Machine', 'Dial', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Lowest'],
      [1, 'Larch DN 12', 'Larch cone', 'Gate', 405, '', '', 25.2, 160],
    ],
    { step: '0.5', largestSpread: '0.25' },
  );
  const { target, dial, step, lowest, highest, maxSpread } = slot!;
  expect(numbers({ target, dial, step, lowest, highest, maxSpread })).toEqual({
    target: [25.2, 'column Target (mm)'],
    dial: [405, 'column Dial'],
    step: [0.03, 'above the table'],
    lowest: [160, 'column Lowest'],
    highest: [900, 'Machines'],
    maxSpread: [0.25, 'your setting'],
  });
  expect(slot!.notes).toEqual(['The target here is 25.2 (column Target (mm)), the Catalogue says 25: the sheet’s counts.']);
});

test('diameters of a catalogue in mm are turned into the inches of the sheet', async () => {
  const [slot] = await slotsOf([
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (in)', 'Reading 2 (in)'],
    [1, 'Larch DN 12', 'Larch cone', 'Gate', '', ''],
  ]);
  // 25 mm / 25.4 (NIST SP 811), to six decimals.
  expect(numbers({ target: slot!.target, step: slot!.step })).toEqual({
    target: [0.984252, 'Catalogue'],
    step: [0.000787, 'Machines'],
  });
});

test.each([
  ['no target', ['', 0.1], /no target diameter in this row \(no crimp data for Larch DN 12 with Larch elbow: do not assemble\)/],
  ['no tolerance', [25, ''], /no tolerance for this row/],
  ['a tolerance that cannot belong to the target', [25, 5], /cannot belong to the target 25/],
  ['a target that is text', ['about 25', 0.1], /target is "about 25"/],
  ['a target that is a date', [45000, 0.1], /target is 45000: that looks like a date/],
  ['an error value', [{ error: '#N/A' }, 0.1], /target is #N\/A/],
])('readings cannot be taken in a row with %s', async (_, [target, tolerance], sentence) => {
  const [slot] = await slotsOf([
    ['Hose', 'Fitting', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)'],
    ['Larch DN 12', 'Larch elbow', '', '', target as FakeCell, tolerance as FakeCell],
  ]);
  expect(slot!.problem).toMatch(sentence);
});

test('line and assembly have columns of their own; cells with formulas are known', async () => {
  const [slot] = await slotsOf([
    ['Assembly no.', 'Line', 'Hose', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Target (mm)', 'Tolerance (mm)', 'Dial'],
    ['H3-117', 4, 'Larch DN 12', { formula: '=1+1', value: 2 }, '', 25, 0.1, { formula: '=A1', value: 400 }],
  ]);
  expect(slot).toMatchObject({ title: 'Line 4, assembly H3-117', formulaCells: ['D2'], dialCell: undefined });
});

test('ten thousand rows are read in a moment', async () => {
  const row = [1, 'Larch DN 12', 'Larch cone', 'Gate', '', '', '', ''];
  const rows = [
    ['Line', 'Hose', 'Fitting', 'Machine', 'Reading 1 (mm)', 'Reading 2 (mm)', 'Reading 3 (mm)', 'Reading 4 (mm)'],
    ...Array.from({ length: 10_000 }, () => row),
  ];
  const start = performance.now();
  expect(await slotsOf(rows)).toHaveLength(10_000);
  expect(performance.now() - start).toBeLessThan(8000);
});

test('one reading a row: positions on the crimp are no lines, and rows go on below a remark before anything is measured', async () => {
  const rows = (sample: number) => [0, 45, 90, 135].map(place => [sample, 'Larch', 'cone', place, '', 25, 0.1]);
  const slots = await slotsOf([
    ['Sample', 'Hose', 'Fitting', 'Pos.', 'Measured (mm)', 'Target', 'Tol ±'],
    ...rows(1),
    ...rows(2),
    [],
    ['Night shift'],
    [],
    ...rows(3),
  ]);
  expect(slots.map(({ row, line, cells, problem }) => [row, line, cells.length, problem])).toEqual([
    [2, '1', 4, undefined],
    [6, '2', 4, undefined],
    [13, '3', 4, undefined],
  ]);
});
