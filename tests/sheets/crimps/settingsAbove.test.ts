import { settingsAbove, statedAbove } from '../../../src/sheets/crimps/settingsAbove';
import { SheetCells } from '../../../src/sheets/table/sheetCells';
import type { FoundTable } from '../../../src/sheets/table/findTables';
import type { CellValue } from '../../../src/workbook/workbook';
import { sheetContent } from '../table/sheetContent';

const HEADINGS = ['Hose', 'Reading 1 (mm)'];

/** What is stated in rows above a table of crimps. */
function above(rows: readonly (readonly CellValue[])[]) {
  const cells = new SheetCells(sheetContent([...rows, HEADINGS, ['Larch DN 12', 27.35]]));
  const block = { row: rows.length, column: 0, rows: 2, columns: 2 };
  const { lengths, dials, problems } = settingsAbove(cells, statedAbove(cells, { block } as FoundTable, []), undefined);
  const tolerance = lengths.tolerance && `${lengths.tolerance.value.toString()} ${lengths.tolerance.unit.symbol}`;
  return { tolerance, highest: dials.highest?.toNumber(), problems };
}

test.each<[string, (readonly CellValue[])[], string | undefined]>([
  ['the number beside its label', [['Tolerance (mm)', 0.12]], '0.12 mm'],
  ['with its unit in the cell behind', [['Tolerance', 0.005, 'in']], '0.005 in'],
  [
    'the nearest of two',
    [
      ['Tolerance (mm)', 0.2],
      ['Tolerance (mm)', 0.12],
    ],
    '0.12 mm',
  ],
  [
    'one above a label that nobody filled in',
    [
      ['Tolerance (mm)', 0.2],
      ['Tolerance (mm)', ''],
    ],
    '0.2 mm',
  ],
  ['nothing where the cell beside is blank', [['Tolerance (mm)', '']], undefined],
])('a tolerance above the table: %s', (_, rows, tolerance) => {
  expect(above(rows)).toEqual({ tolerance, highest: undefined, problems: [] });
});

test('a dial above the table is a number without a unit; what cannot be read is said', () => {
  expect(above([['Highest dial (digits)', 900]])).toEqual({ tolerance: undefined, highest: 900, problems: [] });
  const { tolerance, problems } = above([['Tolerance (mm)', 'small']]);
  expect(tolerance).toBeUndefined();
  expect(problems).toEqual([expect.stringMatching(/^Above the table: Tolerance \(mm\) is "small": /)]);
});
