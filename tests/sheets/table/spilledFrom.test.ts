import { findTables } from '../../../src/sheets/table/findTables';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import type { CellValue } from '../../../src/workbook/workbook';
import { sheetOf } from '../columns/jobSheets';

function cellsWith(rows: CellValue[][], formulas: Record<string, string>): SheetCells {
  const used = sheetOf(rows);
  const filled = used.formulas.map((row, r) => row.map((_, c) => formulas[`${String.fromCharCode(65 + c)}${r + 1}`] ?? ''));
  return new SheetCells({ ...used, formulas: filled });
}

const HEAD = ['Hose', 'Readings', '', 'Target', 'Mean', 'Deviation', 'Spread', 'Verdict'];
const LINE = ['Alder DN 25', 34.11, 34.15, 34.1, 34.13, 0.03, 0.04, 'IN SPEC'];

test('cells beside and below a formula of ours are known to be filled by it', () => {
  const cells = cellsWith([HEAD, LINE, LINE], { E2: '=HOSE.CRIMPDETAIL(B2:C3,D2:D3,0.2)' });
  expect(cells.filledBy(2, 7)).toEqual({ row: 1, column: 4 });
  expect(cells.filledBy(1, 4)).toBeUndefined();
  expect([cells.isComputed(1, 4), cells.isComputed(1, 5), cells.isComputed(1, 3)]).toEqual([true, true, false]);
});

test('a formula that shows #SPILL! fills nothing; one that failed as a whole leaves what is typed beside it alone', () => {
  const formula = { E2: '=HOSE.CRIMPDETAIL(B2:C2,D2,0.2)' };
  const blocked = [HEAD, [...LINE.slice(0, 4), { error: '#SPILL!' }, '', 'seen', '']];
  expect(cellsWith(blocked, formula).filledBy(1, 6)).toBeUndefined();
  const failed = [HEAD, [...LINE.slice(0, 4), { error: '#NAME?' }, '', 'seen', '']];
  expect(cellsWith(failed, formula).filledBy(1, 6)).toBeUndefined();
});

test('answers in words that a formula fills are no row of headings', () => {
  // A second table would begin at a row that is mostly words of the trade.
  const rows = [
    ['Hose', 'Overall', 'Die', 'Dial', 'Dial from'],
    ['Larch DN 12', 840, 'D26', 412, 'MACHINE'],
    ['Larch DN 16', '', 'Hose', 'Dial', 'Machine'],
  ];
  const heights = (formulas: Record<string, string>) => findTables(cellsWith(rows, formulas)).map(({ block }) => block.rows);
  expect(heights({ C2: '=CHOOSECOLS(HOSE.CRIMPSETUP(Catalogue,A2:A3,B2:B3),1,2,6)' })).toEqual([3]);
  expect(heights({})).not.toEqual([3]);
});
