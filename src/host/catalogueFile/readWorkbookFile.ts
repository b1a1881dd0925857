import type { CellValue, Worksheet } from 'exceljs';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { requireFileSize, requireTableSize, UnreadableTable } from './fileLimits';
import { safeArchive } from './safeArchive';

const MS_PER_DAY = 86_400_000;
const UNIX_EPOCH_DAY = 25_569;

/** A cell's plain value: the last result of a formula, the text of rich text and links, the day number of a date. */
function cellOf(value: CellValue | undefined): RawCell {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return Number((value.getTime() / MS_PER_DAY + UNIX_EPOCH_DAY).toFixed(9));
  if (typeof value !== 'object') return value;
  if ('richText' in value) return value.richText.map(run => run.text).join('');
  if ('error' in value) return { error: value.error };
  if ('text' in value) return cellOf(value.text as CellValue);
  return 'result' in value ? cellOf(value.result as CellValue) : null;
}

function tableOf(name: string, sheet: Worksheet): RawTable {
  requireTableSize(`${name}, sheet ${sheet.name}`, sheet.rowCount, sheet.columnCount);
  return Array.from({ length: sheet.rowCount }, (_, row) => {
    const cells = sheet.getRow(row + 1);
    return Array.from({ length: sheet.columnCount }, (__, column) => cellOf(cells.getCell(column + 1).value));
  });
}

/**
 * The sheets of an .xlsx file as tables, by name. The library that reads it is loaded when it is first needed.
 * @throws UnreadableTable where the file is too large, unpacks to too much, or is none
 */
export async function readWorkbookFile(name: string, bytes: Uint8Array): Promise<ReadonlyMap<string, RawTable>> {
  requireFileSize(name, bytes.length);
  const archive = safeArchive(name, bytes);
  const loaded = (await import('exceljs')) as typeof import('exceljs') & { default?: typeof import('exceljs') };
  const { Workbook } = loaded.default ?? loaded;
  const workbook = new Workbook();
  try {
    await workbook.xlsx.load(archive.slice().buffer as ArrayBuffer);
  } catch {
    throw new UnreadableTable(`${name} is no .xlsx file, or it is damaged`);
  }
  if (workbook.worksheets.length === 0) throw new UnreadableTable(`${name} holds no sheet: is it an .xlsx file?`);
  return new Map(workbook.worksheets.map(sheet => [sheet.name, tableOf(name, sheet)]));
}
