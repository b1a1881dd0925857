import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook, type CellFormulaValue } from 'exceljs';
import { plainFileValue } from '../../../src/preview/xlsx/fileValue';
import { formulaFromFile } from '../../../src/preview/xlsx/formulaNames';
import type { CellValue } from '../../../src/workbook/workbook';
import type { FakeCell } from '../../workbook/fakeWorkbook';

type Sheets = Record<string, FakeCell[][]>;

/** Error values come as their text. */
function plain(value: unknown): CellValue {
  const found = plainFileValue(value as never) ?? '';
  return typeof found === 'string' && /^#[A-Z/0]+[!?A]$/.test(found) ? { error: found } : found;
}

/** samples/catalogue.xlsx as the sheets of a fake workbook: its formulas with the values that stand in the file. */
export async function sampleSheets(): Promise<Sheets> {
  const book = new Workbook();
  await book.xlsx.load(readFileSync(join(__dirname, '../../../samples/catalogue.xlsx')) as never);
  const sheets: Sheets = {};
  for (const sheet of book.worksheets) {
    sheets[sheet.name] = Array.from({ length: sheet.rowCount }, (_, row) =>
      Array.from({ length: sheet.columnCount }, (__, column): FakeCell => {
        const { value } = sheet.getCell(row + 1, column + 1);
        const formula = value && typeof value === 'object' && 'formula' in value ? (value as CellFormulaValue) : undefined;
        return formula ? { formula: formulaFromFile(`=${formula.formula}`), value: plain(formula.result) } : plain(value);
      }),
    );
  }
  return sheets;
}
