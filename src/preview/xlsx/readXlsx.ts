import type { IWorkbookData } from '@univerjs/core';
import type { Workbook } from 'exceljs';
import { loadExcelJs } from './excelJs';
import { customOf } from '../host/remembered';
import { readCustomProperties } from './customProperties';
import { definedNameResources } from './definedNames';
import type { FileCell } from './fileCell';
import { hiddenPartNotes } from './hiddenPartNotes';
import { readSheet } from './readSheet';
import { StyleTable } from './styleTable';
import { checkFileStart, UnreadableFile } from './unreadableFile';

/** A workbook read from a file. */
export interface OpenedWorkbook {
  /** For the spreadsheet page and the headless host. */
  readonly data: IWorkbookData;
  /** Every filled cell as the file holds it, sheet by sheet, row by row. */
  readonly cells: readonly FileCell[];
  /** What the person should know: sentences. */
  readonly notes: readonly string[];
}

/** More formulas than this are calculated, but slowly. */
const MANY_FORMULAS = 10_000;

async function load(bytes: Uint8Array, name: string): Promise<Workbook> {
  checkFileStart(bytes, name);
  const { Workbook } = await loadExcelJs();
  const workbook = new Workbook();
  try {
    await workbook.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  } catch {
    throw new UnreadableFile(
      `${name} could not be read: it is damaged, or not an .xlsx workbook. Save it again in your spreadsheet program.`,
    );
  }
  if (workbook.worksheets.length === 0) throw new UnreadableFile(`${name} holds no worksheet.`);
  return workbook;
}

/**
 * Reads an .xlsx workbook: values, formulas, names, formats, styles, widths, merges, frozen panes.
 * @param bytes the file
 * @param name its name, for sentences
 * @throws UnreadableFile with a sentence for the person who picked the file
 */
export async function readXlsx(bytes: Uint8Array, name = 'The file'): Promise<OpenedWorkbook> {
  const workbook = await load(bytes, name);
  const styles = new StyleTable();
  const sheets = workbook.worksheets.map((worksheet, index) => readSheet(worksheet, `sheet${index + 1}`, styles, name));
  const cells = sheets.flatMap(sheet => sheet.cells);
  const formulas = cells.filter(cell => cell.formula).length;
  const data: IWorkbookData = {
    id: 'workbook',
    name,
    appVersion: '',
    locale: 'enUS' as IWorkbookData['locale'],
    styles: styles.byId,
    defaultStyle: { ff: 'Calibri', fs: 11 },
    sheetOrder: sheets.map(sheet => sheet.data.id!),
    sheets: Object.fromEntries(sheets.map(sheet => [sheet.data.id!, sheet.data])),
    resources: definedNameResources(workbook),
    custom: customOf(readCustomProperties(bytes)),
  };
  const slow =
    formulas > MANY_FORMULAS ? [`${formulas.toLocaleString('en')} formulas: calculating them takes a while here.`] : [];
  return { data, cells, notes: [...slow, ...hiddenPartNotes(bytes, workbook)] };
}
