import type { ICellData, IWorksheetData } from '@univerjs/core';
import type { Cell, CellValue, Worksheet } from 'exceljs';
import { cellBlockOf } from './address';
import { readCarriedOver } from './carriedOver';
import { pageFormats, type PageFormat } from './conditionalFormats';
import { eachCell, eachRow } from './eachCell';
import { formulaText, plainFileValue } from './fileValue';
import { fileFormats } from './fileFormats';
import { readFilter, type PageFilter } from './filters';
import { readPrinting } from './printing';
import type { CachedValue, FileCell } from './fileCell';
import { typedFormula } from './storedFormula';
import type { StyleTable } from './styleTable';
import { UnreadableFile } from './unreadableFile';
import { pixelsOfWidth } from './columnWidth';
import { cellAddress } from '../../workbook/a1';

const MOST_ROWS = 120_000;
const MOST_COLUMNS = 2_000;
/** Cells that all formulas of a sheet together may claim to fill; those of an honest sheet do not overlap. */
const MOST_FILLED = 1_000_000;
const POINT = 4 / 3;

function pageCell(value: CachedValue | null, formula: string | undefined, style: string | undefined): ICellData {
  const typed =
    typeof value === 'number' ? { v: value, t: 2 } : typeof value === 'boolean' ? { v: value ? 1 : 0, t: 3 } : { v: value, t: 1 };
  return { ...(value !== null && typed), ...(formula && { f: formula }), ...(style && { s: style }) };
}

function checkSize(worksheet: Worksheet, name: string): void {
  const { rowCount, columnCount } = worksheet;
  if (rowCount <= MOST_ROWS && columnCount <= MOST_COLUMNS) return;
  const most = `${MOST_ROWS.toLocaleString('en')} rows and ${MOST_COLUMNS.toLocaleString('en')} columns`;
  throw new UnreadableFile(
    `${name}: sheet ${worksheet.name} has ${rowCount.toLocaleString('en')} rows and ${columnCount.toLocaleString('en')} columns; the try-out sheet shows up to ${most}. Open it in Excel.`,
  );
}

/** Cells that a formula elsewhere fills, by `row,column`, with the address that formula stands in. */
function spilledCells(worksheet: Worksheet): Map<string, string> {
  const filled = new Map<string, string>();
  // The library counts these anew at every reading.
  const { rowCount, columnCount } = worksheet;
  let believed = MOST_FILLED;
  eachCell(worksheet, cell => {
    const { shareType, ref } = cell.model as unknown as { shareType?: string; ref?: string };
    const block = shareType === 'array' && ref ? cellBlockOf(ref) : undefined;
    if (!block) return;
    believed -=
      (Math.min(block.endRow, rowCount) - block.startRow + 1) * (Math.min(block.endColumn, columnCount) - block.startColumn + 1);
    if (believed < 0) return;
    for (let row = block.startRow; row <= Math.min(block.endRow, rowCount - 1); row++) {
      for (let column = block.startColumn; column <= Math.min(block.endColumn, columnCount - 1); column++) {
        filled.set(`${row},${column}`, cell.address);
      }
    }
  });
  return filled;
}

function frozen(worksheet: Worksheet): IWorksheetData['freeze'] | undefined {
  const view = worksheet.views?.[0];
  if (view?.state !== 'frozen') return undefined;
  const xSplit = Math.min(view.xSplit ?? 0, worksheet.columnCount);
  const ySplit = Math.min(view.ySplit ?? 0, worksheet.rowCount);
  return { xSplit, ySplit, startRow: ySplit || -1, startColumn: xSplit || -1 };
}

function columnsOf(worksheet: Worksheet, styles: StyleTable): NonNullable<IWorksheetData['columnData']> {
  const columns: Record<number, { w?: number; hd?: 0 | 1; s?: string }> = {};
  const count = Math.max(worksheet.columnCount, worksheet.columns?.length ?? 0);
  for (let number = 1; number <= count; number++) {
    const { width, hidden, style } = worksheet.getColumn(number);
    const s = style && styles.idOf(style);
    if (width || hidden || s)
      columns[number - 1] = { ...(width && { w: pixelsOfWidth(width) }), ...(hidden && { hd: 1 }), ...(s && { s }) };
  }
  return columns;
}

/** Excel's own width of columns and height of rows, in pixels, where a file does not say. */
const [USUAL_WIDTH, USUAL_HEIGHT] = [64, 20];

function defaultsOf({ properties }: Worksheet): Pick<IWorksheetData, 'defaultColumnWidth' | 'defaultRowHeight'> {
  const { defaultColWidth: width, defaultRowHeight: height } = properties;
  return {
    defaultColumnWidth: width ? pixelsOfWidth(width) : USUAL_WIDTH,
    defaultRowHeight: height ? height * POINT : USUAL_HEIGHT,
  };
}

/** A sheet of a file for the page. */
export interface ReadSheet {
  readonly data: Partial<IWorksheetData>;
  readonly cells: FileCell[];
  /** Conditional formats that the page draws, and how many rules it does not. */
  readonly formats: readonly PageFormat[];
  readonly undrawn: number;
  readonly filter: PageFilter | undefined;
}

function cellsOf(worksheet: Worksheet, styles: StyleTable) {
  const filled = spilledCells(worksheet);
  const cells: FileCell[] = [];
  const cellData: Record<number, Record<number, ICellData>> = {};
  const rowData: Record<number, { h?: number; hd?: 0 | 1 }> = {};

  const read = (cell: Cell, row: number, column: number) => {
    const style = styles.idOf(cell.style);
    const covered = cell.isMerged && cell.master !== cell;
    const from = filled.get(`${row},${column}`);
    const address = cellAddress({ row, column });
    const isFilled = from !== undefined && from !== address;
    // The library leaves results of 0 and "" out of a formula's value, not out of its result.
    const value = covered ? null : plainFileValue(cell.formula ? (cell.result as CellValue) : cell.value);
    const stored = covered || isFilled ? undefined : formulaText(cell);
    const formula = stored === undefined ? undefined : typedFormula(stored);
    if (value !== null || formula) {
      const origin = isFilled ? { filledFrom: from } : {};
      cells.push({ sheet: worksheet.name, address, cached: value ?? '', ...(formula && { formula }), ...origin });
    }
    const page = pageCell(isFilled ? null : value, formula, style);
    if (Object.keys(page).length > 0) (cellData[row] ??= {})[column] = page;
  };

  eachCell(worksheet, read);
  eachRow(worksheet, ({ height, hidden }, row) => {
    if (height || hidden) rowData[row] = { ...(height && { h: height * POINT }), ...(hidden && { hd: 1 }) };
  });
  return { cells, cellData, rowData };
}

/**
 * One sheet of a file for the spreadsheet page.
 * @throws UnreadableFile where it is larger than the page can show
 */
export function readSheet(worksheet: Worksheet, id: string, styles: StyleTable, name: string): ReadSheet {
  checkSize(worksheet, name);
  const { cells, cellData, rowData } = cellsOf(worksheet, styles);
  const freeze = frozen(worksheet);
  const page = readPrinting(worksheet);
  const merges = ((worksheet.model as unknown as { merges?: string[] }).merges ?? [])
    .map(cellBlockOf)
    .filter(block => block !== undefined);
  const size = { rowCount: Math.max(200, worksheet.rowCount + 100), columnCount: Math.max(26, worksheet.columnCount + 12) };
  const data: Partial<IWorksheetData> = {
    id,
    name: worksheet.name,
    hidden: worksheet.state === 'visible' ? 0 : 1,
    ...size,
    ...defaultsOf(worksheet),
    cellData,
    rowData,
    columnData: columnsOf(worksheet, styles),
    mergeData: merges,
    showGridlines: worksheet.views?.[0]?.showGridLines === false ? 0 : 1,
    ...(freeze && { freeze }),
    custom: { ...readCarriedOver(worksheet), ...(page && { page }) },
  };
  const { drawn, undrawn } = pageFormats(fileFormats(worksheet), size);
  return { data, cells, formats: drawn, undrawn, filter: readFilter(worksheet) };
}
