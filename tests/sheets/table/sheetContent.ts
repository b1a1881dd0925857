import type { CellValue, RangeContent } from '../../../src/workbook/workbook';
import { addressOf } from '../../../src/workbook/a1';

/** A range as the port hands it over, from its values. */
export function sheetContent(values: readonly (readonly CellValue[])[], sheet = 'Jobs', row = 0): RangeContent {
  const columns = Math.max(...values.map(cells => cells.length));
  const filled = values.map(cells => [...cells, ...Array<CellValue>(columns - cells.length).fill('')]);
  return {
    sheet,
    address: addressOf({ row, column: 0, rows: filled.length, columns }),
    row,
    column: 0,
    values: filled,
    formulas: filled.map(cells => cells.map(() => '')),
    formats: filled.map(cells => cells.map(() => 'General')),
  };
}
