import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workbook, type CellValue as FileValue } from 'exceljs';
import type { FakeCell } from '../../workbook/fakeWorkbook';

const DAY_MS = 86_400_000;
const EPOCH_DAY = 25_569;

/** A cell of a file as a sheet shows it: the cached value of a formula, a date as its day number. */
function shown(value: FileValue): FakeCell {
  if (value === null || value === undefined) return '';
  if (value instanceof Date) return value.getTime() / DAY_MS + EPOCH_DAY;
  if (typeof value !== 'object') return value;
  if ('error' in value) return { error: String(value.error) };
  if ('result' in value) return shown(value.result as FileValue);
  if ('formula' in value) return '';
  return 'richText' in value ? value.richText.map(({ text }) => text).join('') : '';
}

/** All sheets of a sample workbook, values as they stand in the file. */
export async function sampleSheets(file: string): Promise<Readonly<Record<string, FakeCell[][]>>> {
  const book = new Workbook();
  const bytes = readFileSync(join(__dirname, '../../../samples', file));
  await book.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  return Object.fromEntries(
    book.worksheets.map(sheet => [
      sheet.name,
      Array.from({ length: sheet.rowCount }, (_, row) =>
        Array.from({ length: sheet.columnCount }, (__, column) => shown(sheet.getCell(row + 1, column + 1).value)),
      ),
    ]),
  );
}
