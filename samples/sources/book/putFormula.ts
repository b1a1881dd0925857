import type { CellFormulaValue, CellValue, Worksheet } from 'exceljs';
import { storedValue } from './cachedValue';
import { evaluate, storedText, type Call } from './call';

/**
 * Puts a call of our functions into a cell, with its value and those of the cells it spills into.
 * @returns the values, as they stand in the sheet now
 */
export async function putFormula(sheet: Worksheet, address: string, what: Call): Promise<unknown[][]> {
  const values = (await evaluate(what, sheet)).map(row => row.map(storedValue));
  const first = sheet.getCell(address);
  const row = Number(first.row);
  const column = Number(first.col);
  values.forEach((cells, down) => {
    cells.forEach((value, across) => {
      sheet.getCell(row + down, column + across).value = value as CellValue;
    });
  });
  const last = sheet.getCell(row + values.length - 1, column + values[0]!.length - 1).address;
  const ref = last === first.address ? last : `${first.address}:${last}`;
  first.value = { formula: storedText(what), result: values[0]![0], shareType: 'array', ref } as unknown as CellFormulaValue;
  return values;
}
