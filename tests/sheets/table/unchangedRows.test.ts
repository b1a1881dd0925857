import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { unchangedRows } from '../../../src/sheets/table/unchangedRows';
import type { CellValue, SheetLayout } from '../../../src/workbook/workbook';

const cellsOf = (values: readonly (readonly CellValue[])[], layout?: SheetLayout, formats = 'General') =>
  new SheetCells(
    {
      sheet: 'Pieces',
      address: 'A1:B3',
      row: 0,
      column: 0,
      values,
      formulas: values.map(row => row.map(() => '')),
      formats: values.map(row => row.map(() => formats)),
    },
    layout,
  );

const ROWS: readonly (readonly CellValue[])[] = [
  ['Piece', 'Hose'],
  ['A-1', 'Alder DN 12'],
  ['A-2', 'Rowan DN 12'],
];

/** Reads rows 2 and 3, and says which of them had to be worked out. */
function reader() {
  const known = unchangedRows<string>();
  return (cells: SheetCells, facts = 'mm', beside?: object) => {
    const worked: number[] = [];
    const rowByRow = known(cells, facts, beside);
    for (const row of [1, 2]) {
      const work = () => {
        worked.push(row + 1);
        return String(cells.value(row, 1));
      };
      expect(rowByRow(row, '', work)).toBe(String(cells.shown(row, 1)));
    }
    return worked;
  };
}

test('a row is worked out again where a value, a formula or a format of it changed, and only that row', () => {
  const read = reader();
  expect(read(cellsOf(ROWS))).toEqual([2, 3]);
  expect(read(cellsOf(ROWS.map(row => [...row])))).toEqual([]);
  expect(read(cellsOf([ROWS[0]!, ['A-1', 'Alder DN 16'], ROWS[2]!]))).toEqual([2]);
  expect(read(cellsOf([ROWS[0]!, ['A-1', 'Alder DN 16'], ROWS[2]!], undefined, '0.00'))).toEqual([2, 3]);
  expect(read(cellsOf([ROWS[0]!, ROWS[2]!, ROWS[1]!], undefined, '0.00'))).toEqual([2, 3]);
});

test('all rows are worked out again where something else is known of their table, or beside it', () => {
  const read = reader();
  const catalogue = {};
  expect(read(cellsOf(ROWS), 'mm', catalogue)).toEqual([2, 3]);
  expect(read(cellsOf(ROWS), 'mm', catalogue)).toEqual([]);
  expect(read(cellsOf(ROWS), 'in', catalogue)).toEqual([2, 3]);
  expect(read(cellsOf(ROWS), 'in', {})).toEqual([2, 3]);
});

test('rows that take something from other rows are always worked out', () => {
  const read = reader();
  const merges = [{ row: 1, column: 0, rows: 2, columns: 1 }];
  const merged: SheetLayout = { hiddenRows: new Set(), hiddenColumns: new Set(), isHidden: false, merges };
  expect([read(cellsOf(ROWS, merged)), read(cellsOf(ROWS, merged))]).toEqual([
    [2, 3],
    [2, 3],
  ]);
  const ditto = [ROWS[0]!, ROWS[1]!, ['A-2', 'ditto']];
  expect([read(cellsOf(ditto)), read(cellsOf(ditto))]).toEqual([[2, 3], [3]]);
});
