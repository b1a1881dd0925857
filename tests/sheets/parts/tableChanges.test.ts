import { catalogueTables } from '../../../src/core/catalogue/tables/catalogueTables';
import { restoringShares, tableChanges } from '../../../src/sheets/parts/tableChanges';
import { tableGrid } from '../../../src/sheets/parts/tableGrid';
import { sheetContent } from '../table/sheetContent';

test('rates written in another order: a number in the place of a fraction is no per cent any more, until it is undone', () => {
  const head = ['Rate', 'Value'];
  const before = sheetContent([head, ['scrap fraction', 0.04], ['labour per hour', 60]]);
  const content = {
    ...before,
    formats: before.formats.map((row, r) => row.map((_, c) => (r === 1 && c === 1 ? '0.0 %' : 'General'))),
  };
  const grid = tableGrid(catalogueTables.rates, [head, ['labour per hour', 62], ['Scrap fraction', 0.035]], head);
  const block = { row: 0, column: 0, rows: 3, columns: 2 };
  const formats = (changes: ReturnType<typeof restoringShares>) =>
    changes.flatMap(change => (change.kind === 'format' ? [[change.at.address, change.numberFormat]] : []));
  expect(formats(tableChanges(grid, content.sheet, block, false, content))).toEqual([
    ['B2', 'General'],
    ['B3', '0.0 %'],
  ]);
  expect(formats(restoringShares(grid, content, content.sheet, block))).toEqual([
    ['B2', '0.0 %'],
    ['B3', 'General'],
  ]);
});
