import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { blockOf } from '../../src/workbook/a1';
import { readXlsx } from '../../src/preview/xlsx/readXlsx';
import { fakeWorkbook, type FakeCell } from '../workbook/fakeWorkbook';

const isDateFormat = (format: string | undefined): format is string => !!format?.includes('yy');

/** Cells that are formatted as dates, by sheet and address. */
async function dateFormats(bytes: Uint8Array): Promise<Record<string, Record<string, string>>> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  const formats: Record<string, Record<string, string>> = {};
  for (const sheet of book.worksheets) {
    const own: Record<string, string> = (formats[sheet.name] = {});
    sheet.eachRow(row =>
      row.eachCell(({ address, numFmt }) => {
        if (isDateFormat(numFmt)) own[address] = numFmt;
      }),
    );
  }
  return formats;
}

/** The sample as a host has it: values as saved, formulas behind them, dates formatted as such. */
export async function openSample(name: string, selected: { sheet: string; address: string }) {
  const bytes = new Uint8Array(readFileSync(join(__dirname, '../../samples', name)));
  const { cells } = await readXlsx(bytes);
  const sheets: Record<string, FakeCell[][]> = {};
  for (const { sheet, address, formula, cached } of cells) {
    const { row, column } = blockOf(address)!;
    const rows = (sheets[sheet] ??= []);
    while (rows.length <= row) rows.push([]);
    while (rows[row]!.length <= column) rows[row]!.push('');
    rows[row]![column] = formula ? { formula, value: cached } : cached;
  }
  return fakeWorkbook(sheets, selected, { formats: await dateFormats(bytes) }).workbook;
}
