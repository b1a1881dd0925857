import type { Change } from '../../../src/workbook/workbook';
import { blockOf } from '../../../src/workbook/a1';
import { Decimal } from '../../../src/core/units/decimal';
import { measureUnit } from '../../../src/core/units/measureUnit';
import { jobTable } from '../../../src/sheets/jobs/jobTable';
import { findTables, tableAt } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { NO_ANSWERS } from '../../../src/sheets/table/tableAnswers';
import { planRow, type RowContent } from '../../../src/sheets/duty/planRow';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const millimetres = (value: number) => ({ value: new Decimal(value), unit: measureUnit('length', 'mm')! });

const content: RowContent = {
  hose: 'Larch DN 16',
  fittingA: 'Larch cone elbow',
  fittingB: 'Larch cone straight',
  quantity: 4,
  overall: millimetres(1270),
  cutOffA: millimetres(60),
  cutOffB: millimetres(30),
};

async function plan(
  rows: readonly (readonly FakeCell[])[],
  selected = 'A2',
  change: Partial<RowContent> = {},
  hostTables: string[] = [],
) {
  const { workbook } = fakeWorkbook({ Jobs: rows }, { sheet: 'Jobs', address: selected });
  const used = (await workbook.used('Jobs'))!;
  const blocks = hostTables.map(address => blockOf(address)!);
  const cells = new SheetCells(used);
  const table = tableAt(findTables(cells, blocks), blockOf(selected)!)!;
  return planRow(cells, jobTable(cells, table, NO_ANSWERS, {}), { ...content, ...change }, blocks);
}

const cells = (changes: readonly Change[]) =>
  Object.fromEntries(
    changes.map(change => {
      if (change.kind === 'values') return [change.at.address, change.values[0]![0]];
      if (change.kind === 'formulas') return [change.at.address, change.formulas[0]![0]];
      throw new Error(`unexpected ${change.kind}`);
    }),
  );

const HEADINGS = ['Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Qty', 'Cut length'];
const formula = (row: number): FakeCell => ({ formula: `=HOSE.CUTLENGTH(D${row},60,30)`, value: row });

test('the row below the last one is written, and the formulas of the row above go on', async () => {
  const { changes, message } = await plan([HEADINGS, ['Larch DN 12', 'x', 'y', 840, 1, formula(2)]]);
  expect(cells(changes)).toEqual({
    A3: 'Larch DN 16',
    B3: 'Larch cone elbow',
    C3: 'Larch cone straight',
    D3: 1270,
    E3: 4,
    F3: '=HOSE.CUTLENGTH(D3,60,30)',
  });
  expect(message).toBe(
    'Wrote row 3 of sheet Jobs (A3:F3). Hose: Larch DN 16; Fitting A: Larch cone elbow; Fitting B: Larch cone straight; Overall length (mm): 1270; Qty: 4. Formulas copied: Cut length.',
  );
});

test('a row that waits with formulas is filled, and its formulas stay', async () => {
  const waiting = (row: number): FakeCell => ({ formula: `=HOSE.CUTLENGTH(D${row},60,30)`, value: '' });
  const rows = [
    HEADINGS,
    ['Larch DN 12', 'x', 'y', 840, 1, formula(2)],
    ['', '', '', '', '', waiting(3)],
    ['', '', '', '', '', waiting(4)],
  ];
  const { changes, row } = await plan(rows);
  expect(row).toBe(2);
  expect(Object.keys(cells(changes))).toEqual(['A3', 'B3', 'C3', 'D3', 'E3']);
});

test('a row with anything in it is not free, even with a note only', async () => {
  const rows = [
    HEADINGS,
    ['Larch DN 12', 'x', 'y', 840, 1, 750],
    ['', '', '', '', 'asked for', ''],
    ['', '', '', '', '', formula(4)],
  ];
  expect((await plan(rows)).row).toBe(3);
});

test('where the row below the table holds something nothing is written', async () => {
  const rows = [
    HEADINGS,
    ['Larch DN 12', 'x', 'y', 840, 1, 750],
    ['Hose', 'Qty', 'Die', 'Dial', '', ''],
    ['a', 1, 'D1', 3, '', ''],
  ];
  await expect(plan(rows)).rejects.toThrow('Row 3 below the table is not free. Insert a row first. Nothing was written.');
});

test('a total is not pushed down or passed', async () => {
  const rows = [
    HEADINGS,
    ['Larch DN 12', 'x', 'y', 840, 1, 750],
    ['Total', '', '', '', { formula: '=SUM(E2:E2)', value: 1 }, ''],
  ];
  await expect(plan(rows)).rejects.toThrow('Row 3 is a total with no free row above it.');
});

describe('totals that say so by their formula alone, or in other words', () => {
  const line = ['Larch DN 12', 'x', 'y', 840, 1, 750] as const;
  const sum: FakeCell = { formula: '=SUM(E2:E2)', value: 1 };
  const note = ['Prices without tax', '', '', '', '', ''];
  const blank = ['', '', '', '', '', ''];
  const bare: FakeCell[] = ['', '', '', '', sum, ''];
  test.each<[string, FakeCell[][], number]>([
    ['nothing but a sum', [bare], 3],
    ['a sum, then a remark', [bare, note], 3],
    ['a total, then a remark', [['Total', '', '', '', sum, ''], note], 3],
    ['a total, a blank row and a remark', [['Total', '', '', '', sum, ''], blank, note], 3],
    ['Carried forward', [['Carried forward', '', '', '', sum, '']], 3],
    ['Average', [['Average', '', '', '', sum, '']], 3],
  ])('%s', async (_, below, row) => {
    await expect(plan([HEADINGS, [...line], ...below])).rejects.toThrow(
      `Row ${row} is a total with no free row above it. Insert a row there first. Nothing was written.`,
    );
  });

  test('a free row above it is taken, and the total is named', async () => {
    const { row, message } = await plan([HEADINGS, [...line], blank, bare, note]);
    expect(row).toBe(2);
    expect(message).toContain('Row 4 is a total: check that it covers row 3.');
  });
});

test('the length follows the unit of its heading', async () => {
  const headings = ['Hose', 'Overall length (in)', 'Cut-off A (in)', 'Cut-off B (in)'];
  const { changes, message } = await plan([headings, ['Larch DN 12', 33, 1, 1]]);
  expect(cells(changes)).toEqual({ A3: 'Larch DN 16', B3: 50, C3: 2.3622, D3: 1.1811 });
  expect(message).toContain('No column for: Fitting A, Fitting B, Quantity.');
});

test('a heading that has no unit is asked for, not guessed at', async () => {
  await expect(
    plan([
      ['Hose', 'Fitting A', 'Fitting B', 'Overall length'],
      ['Larch DN 12', 'x', 'y', 33],
    ]),
  ).rejects.toThrow(
    'Column Overall length has no unit that is known. Write it in the heading, like (mm), or say it under Columns. Nothing was written.',
  );
});

test('an overall length that is not known is left blank and said', async () => {
  const { changes, message } = await plan([HEADINGS, ['Larch DN 12', 'x', 'y', 840, 1, 750]], 'A2', { overall: undefined });
  expect(cells(changes)).not.toHaveProperty('D3');
  expect(message).toContain('The overall length is not known and was left blank.');
});

test.each([
  ['of other things', ['Part', 'Price'], ['bolt', 2]],
  ['of hoses', ['Hose', 'Family', 'Bore (mm)'], ['Larch DN 12', 'Larch', 12.7]],
  ['of crimps', ['Hose', 'Fitting', 'Die', 'Dial'], ['Larch DN 12', 'x', 'D23', 412]],
  ['of stock', ['Hose', 'Length (mm)', 'Quantity', 'Place'], ['Larch DN 12', 40000, 1, 'A1']],
] as const)('a table %s is refused', async (_, headings, row) => {
  await expect(plan([headings, row])).rejects.toThrow('Select a cell of your job table. Nothing was written.');
});

test('below a host’s table it is said that the table has to be widened; another table there stops it', async () => {
  const rows = [HEADINGS, ['Larch DN 12', 'x', 'y', 840, 1, 750], [], []];
  expect((await plan(rows, 'A2', {}, ['A1:F2'])).message).toContain('widen the table by its corner');
  await expect(plan(rows, 'A2', {}, ['A1:F2', 'A3:B4'])).rejects.toThrow('is not free');
});

test('temperature and fluid of the duty go into their columns, in the unit of the heading, so that the line is rated by them', async () => {
  const duty = { temperature: { value: new Decimal(80), unit: measureUnit('temperature', '°C')! }, fluid: 'HLP 46' };
  const rows = [
    [...HEADINGS.slice(0, 5), 'Temperature (°F)', 'Fluid'],
    ['Larch DN 12', 'x', 'y', 840, 1, '', ''],
  ];
  // 80 °C = 176 °F, by definition.
  expect(cells((await plan(rows, 'A2', duty)).changes)).toMatchObject({ F3: 176, G3: 'HLP 46' });
  const without = await plan([HEADINGS, ['Larch DN 12', 'x', 'y', 840, 1, '']], 'A2', duty);
  expect(without.message).not.toMatch(/No column for/);
});

test('the twist of two bent ends goes into its column, where the table has one', async () => {
  const rows = [
    [...HEADINGS.slice(0, 5), 'Twist angle'],
    ['Larch DN 12', 'x', 'y', 840, 1, ''],
  ];
  expect(cells((await plan(rows, 'A2', { twist: 90 })).changes)).toMatchObject({ F3: 90 });
  expect(cells((await plan(rows, 'A2')).changes)).not.toHaveProperty('F3');
});
