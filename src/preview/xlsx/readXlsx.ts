import type { IWorkbookData } from '@univerjs/core';
import type { Workbook, Worksheet } from 'exceljs';
import type { LeftOut } from '../../host/catalogueFile/boundedParts';
import { safeArchive, type SafeArchive } from '../../host/catalogueFile/safeArchive';
import type { RangeAddress } from '../../workbook/workbook';
import { loadExcelJs } from './excelJs';
import { customOf } from '../host/remembered';
import { readCustomProperties } from './customProperties';
import { definedNameResources } from './definedNames';
import type { FileCell } from './fileCell';
import { hiddenPartNotes, listed } from './hiddenPartNotes';
import { FILTERS_RESOURCE } from './filters';
import { readSheet, type ReadSheet } from './readSheet';
import { FORMATS_RESOURCE } from './savedFormats';
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
  /** Cell of the first sheet that was selected when the file was saved; undefined where none is kept. */
  readonly selected?: RangeAddress | undefined;
}

/** More formulas than this are calculated, but slowly. */
const MANY_FORMULAS = 10_000;

const damaged = (name: string) =>
  new UnreadableFile(
    `${name} could not be read: it is damaged, or not an .xlsx workbook. Save it again in your spreadsheet program.`,
  );

function unpacked(bytes: Uint8Array, name: string): SafeArchive {
  try {
    return safeArchive(name, bytes);
  } catch (error) {
    throw /unpacks to more/.test(String(error)) ? new UnreadableFile(`${(error as Error).message}.`) : damaged(name);
  }
}

async function load({ bytes }: SafeArchive, name: string): Promise<Workbook> {
  const { Workbook } = await loadExcelJs();
  const workbook = new Workbook();
  try {
    await workbook.xlsx.load(bytes.slice().buffer as ArrayBuffer);
  } catch {
    throw damaged(name);
  }
  if (workbook.worksheets.length === 0) throw new UnreadableFile(`${name} holds no worksheet.`);
  return workbook;
}

/** What a part of the page keeps for each sheet, as a workbook's data hold it. */
function resource(name: string, sheets: readonly ReadSheet[], of: (sheet: ReadSheet) => unknown) {
  const bySheet = sheets.flatMap(sheet => (of(sheet) === undefined ? [] : [[sheet.data.id!, of(sheet)]]));
  return { name, data: JSON.stringify(Object.fromEntries(bySheet) as object) };
}

function selectedIn({ name, views }: Worksheet): RangeAddress | undefined {
  const address = views?.[0]?.activeCell;
  return address && /^[A-Z]{1,3}[1-9]\d{0,6}$/.test(address) ? { sheet: name, address } : undefined;
}

/** What was left out so that the file opens at all. */
function boundedNotes(leftOut: readonly LeftOut[]): string[] {
  if (leftOut.length === 0) return [];
  return [
    `Too large for this page, and left out or shortened here and in a file saved from here: ${listed(leftOut)}. Keep the original.`,
  ];
}

/**
 * Reads an .xlsx workbook: values, formulas, names, formats, styles, widths, merges, frozen panes.
 * @param bytes the file
 * @param name its name, for sentences
 * @throws UnreadableFile with a sentence for the person who picked the file
 */
export async function readXlsx(bytes: Uint8Array, name = 'The file'): Promise<OpenedWorkbook> {
  checkFileStart(bytes, name);
  const archive = unpacked(bytes, name);
  const workbook = await load(archive, name);
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
    resources: [
      ...definedNameResources(workbook),
      resource(FORMATS_RESOURCE, sheets, sheet => (sheet.formats.length > 0 ? sheet.formats : undefined)),
      resource(FILTERS_RESOURCE, sheets, sheet => sheet.filter),
    ],
    custom: customOf(readCustomProperties(bytes)),
  };
  const slow =
    formulas > MANY_FORMULAS ? [`${formulas.toLocaleString('en')} formulas: calculating them takes a while here.`] : [];
  return {
    data,
    cells,
    selected: selectedIn(workbook.worksheets[0]!),
    notes: [
      ...slow,
      ...boundedNotes(archive.leftOut),
      ...hiddenPartNotes(
        bytes,
        sheets.reduce((sum, { undrawn }) => sum + undrawn, 0),
      ),
    ],
  };
}
