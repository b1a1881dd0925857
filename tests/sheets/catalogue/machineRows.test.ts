import type { CellValue } from '../../../src/workbook/workbook';
import { machineRows } from '../../../src/sheets/catalogue/machineRows';
import { fakeWorkbook, type FakeCell } from '../../workbook/fakeWorkbook';

const HEADINGS = ['Note', 'Machine', 'Die', 'Hose', 'Fitting', 'Dial', 'Step (mm)', 'Lowest', 'Highest', 'Largest move', 'Date'];
const GATE = ['', 'Gate', '', '', '', '', 0.016, 100, 900, 12, '2025-03-01'];
const FORMULA = '=HOSE.CATALOGUE(Hoses!A1:B9,Fittings!A1:B9,Crimps!A1:B9,Machines!A1:K20)';

function workbookOf(machines: CellValue[][], formula = FORMULA) {
  const cell: FakeCell = { formula, value: 'CAT-00000000 (mm, bar; 0 hoses, 0 fittings, 0 crimps)' };
  const { workbook } = fakeWorkbook({ Front: [[cell]], Machines: machines }, { sheet: 'Front', address: 'A1' });
  return { ...workbook, names: async () => [{ name: 'Catalogue', at: { sheet: 'Front', address: 'A1' } }] };
}

test('the row that describes a machine for all dies is found by its headings; recorded settings and rows of one die are not it', async () => {
  const found = await machineRows(
    workbookOf([
      HEADINGS,
      ['', 'Gate', 'D23', 'Larch', 'Cone', 414, '', '', '', '', ''],
      ['', 'Van', 'D40', '', '', '', 0.5, 1, 2, 3, ''],
      ['', 'Van', '', '', '', '', -0.022, 50, 750, '', ''],
      GATE,
    ]),
  );
  expect(found).toMatchObject({ sheet: 'Machines', stepUnit: 'mm', body: { row: 1, rows: 19 } });
  expect(found!.columns).toEqual({ machine: 1, step: 6, lowest: 7, highest: 8, largestMove: 9 });
  expect(found!.machines.map(({ name, row, isFirst, states }) => [name, row, isFirst, [...states].join()])).toEqual([
    ['Van', 3, false, 'step,lowest,highest'],
    ['Gate', 4, false, 'step,lowest,highest,largestMove'],
  ]);
});

test('of several descriptions of a machine the newest counts', async () => {
  const older = [...GATE.slice(0, 10), '2024-01-01'];
  const newer = [...GATE.slice(0, 10), 46_000];
  const found = await machineRows(workbookOf([HEADINGS, GATE, newer, older]));
  expect(found!.machines.map(({ row, isFirst }) => [row, isFirst])).toEqual([[2, false]]);
});

test.each([
  ['the formula takes no machines', [HEADINGS, GATE], '=HOSE.CATALOGUE(Hoses!A1:B9,Fittings!A1:B9,Crimps!A1:B9)'],
  [
    'its tables are calculated',
    [HEADINGS, GATE],
    '=HOSE.CATALOGUE(Hoses!A1:B9,Fittings!A1:B9,Crimps!A1:B9,OFFSET(Machines!A1,0,0,9,9))',
  ],
  ['headings are missing', [['a', 'b'], GATE], FORMULA],
  ['no machine states its change per digit', [HEADINGS, ['', 'Gate', '', '', '', '', '', 1, 2, 3, '']], FORMULA],
])('nothing is offered where %s', async (_, machines, formula) =>
  expect(await machineRows(workbookOf(machines as CellValue[][], formula))).toBeUndefined(),
);
