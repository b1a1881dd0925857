import type { CellValue, Worksheet } from 'exceljs';
import type { FileSheet } from '../../core/catalogue/partsFile';
import { isNotEmpty, type RawCell, type RawTable } from '../../core/catalogue/rawTable';
import { requireFileSize, requireTableSize, UnreadableTable } from './fileLimits';
import { safeArchive } from './safeArchive';
import { breathe, type Watch } from '../../workbook/watch';
import { MS_PER_DAY, UNIX_EPOCH_DAY } from '../../core/units/sheetDate';

const ROWS_A_PIECE = 5000;

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

/** The filled part of a sheet from its first cell on; rows and columns that only have a look do not count. */
async function tableOf(name: string, sheet: Worksheet, watch: Watch, share: number): Promise<RawTable> {
  const rows: RawCell[][] = [];
  let columns = 0;
  for (let row = 1; row <= sheet.rowCount; row++) {
    // Cells are counted from 1 in the library's lists.
    const listed = (sheet.findRow(row)?.values ?? []) as readonly CellValue[];
    const cells = Array.from(listed, cellOf).slice(1);
    while (cells.length > 0 && !isNotEmpty(cells.at(-1)!)) cells.pop();
    columns = Math.max(columns, cells.length);
    rows.push(cells);
    if (row % ROWS_A_PIECE === 0) await breathe(watch, share);
  }
  while (rows.length > 0 && rows.at(-1)!.length === 0) rows.pop();
  requireTableSize(`${name}, sheet ${sheet.name}`, rows.length, columns);
  return rows.map(cells => [...cells, ...Array<null>(columns - cells.length).fill(null)]);
}

async function fileSheet(name: string, sheet: Worksheet, watch: Watch, share: number): Promise<FileSheet> {
  try {
    return { table: await tableOf(name, sheet, watch, share) };
  } catch (error) {
    if (error instanceof UnreadableTable) return { reason: error.message };
    throw error;
  }
}

/**
 * The sheets of an .xlsx file as tables, by name. The library that reads it is loaded when it is first needed.
 * @throws UnreadableTable where the file is too large, unpacks to too much, or is none; Stopped where the user stops it
 */
export async function readWorkbookFile(
  name: string,
  bytes: Uint8Array,
  watch: Watch = {},
): Promise<ReadonlyMap<string, FileSheet>> {
  requireFileSize(name, bytes.length);
  await breathe(watch);
  const archive = safeArchive(name, bytes).bytes;
  const loaded = (await import('exceljs')) as typeof import('exceljs') & { default?: typeof import('exceljs') };
  const { Workbook } = loaded.default ?? loaded;
  const workbook = new Workbook();
  await breathe(watch);
  try {
    await workbook.xlsx.load(archive.slice().buffer as ArrayBuffer);
  } catch {
    throw new UnreadableTable(`${name} is not an .xlsx file, or it is damaged`);
  }
  if (workbook.worksheets.length === 0) throw new UnreadableTable(`${name} holds no sheet: is it an .xlsx file?`);
  const sheets = new Map<string, FileSheet>();
  for (const [index, sheet] of workbook.worksheets.entries()) {
    const share = 0.5 + (0.5 * index) / workbook.worksheets.length;
    await breathe(watch, share);
    sheets.set(sheet.name, await fileSheet(name, sheet, watch, share));
  }
  return sheets;
}
