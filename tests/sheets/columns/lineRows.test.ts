import { linesReport } from '../../../src/sheets/columns/lineRows';
import { tableColumnsOf } from '../../../src/sheets/columns/tableColumnsOf';
import { findTables } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import { sheetContent } from '../table/sheetContent';

test('the view of columns says which rows it takes and which are no lines', () => {
  const rows = [
    ['Hose', 'Overall (mm)', 'Qty'],
    ['Larch DN 12', 900, 4],
    ['urgent ones below', '', ''],
    ['Larch DN 8', 700, 2],
    ['Total', '', 6],
  ];
  const cells = new SheetCells(sheetContent(rows));
  const [table] = findTables(cells);
  const { taken, leftOut, tables } = linesReport({ cells, table: table!, columns: tableColumnsOf(cells, table!) });
  expect(tables).toEqual(['A1:C5']);
  expect(taken).toEqual([2, 4]);
  expect(leftOut).toEqual([
    { row: 3, reason: 'remark' },
    { row: 5, reason: 'total' },
  ]);
});
