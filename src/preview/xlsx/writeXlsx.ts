import type { ICellData, IStyleData, IWorkbookData, IWorksheetData, Nullable } from '@univerjs/core';
import type { Cell, CellErrorValue, CellValue as FileCellValue, Worksheet } from 'exceljs';
import { readCell } from '../host/cellReading';
import { cellBlockAddress, type CellBlock } from './address';
import { writeCarriedOver, type CarriedOver } from './carriedOver';
import { fileStyle } from './cellStyle';
import { widthOfPixels } from './columnWidth';
import { definedNamesOf } from './definedNames';
import { markDynamicArrays } from './dynamicArrays';
import { loadExcelJs } from './excelJs';
import { isErrorText } from '../host/cellReading';
import { filterOf } from './filters';
import { writePrinting } from './printing';
import { savedFormats } from './savedFormats';
import type { CachedValue } from './fileCell';
import { propertiesOf } from '../host/remembered';
import { tidyPackage } from './tidyPackage';
import { callsOursAsTyped, storedFormula } from './storedFormula';
import { cellAddress } from '../../workbook/a1';

/** A workbook of the spreadsheet page with all that a file needs. */
export interface SavedWorkbook {
  readonly data: IWorkbookData;
  /** Formula of a cell as typed; undefined where it holds none. */
  formulaOf(sheetId: string, row: number, column: number): string | undefined;
  /** Block that the formula of a cell fills. */
  blockOf(sheetId: string, row: number, column: number): CellBlock | undefined;
  /** What the file that was opened holds for a formula that still stands where it stood. */
  valueInFile(sheetName: string, address: string, formula: string): CachedValue | undefined;
  /** Cell as a formula elsewhere fills it. */
  filledCell(sheetId: string, row: number, column: number): Nullable<ICellData>;
}

const POINT = 4 / 3;

function fileValue(cell: Nullable<ICellData>): FileCellValue {
  const value = readCell(cell);
  if (typeof value === 'object') return { error: value.error } as CellErrorValue;
  return value === '' ? null : value;
}

class SheetWriter {
  constructor(
    private readonly workbook: SavedWorkbook,
    private readonly id: string,
    private readonly sheet: Partial<IWorksheetData>,
    private readonly worksheet: Worksheet,
  ) {}

  private styleOf(style: Nullable<IStyleData | string>): IStyleData | undefined {
    return (typeof style === 'string' ? this.workbook.data.styles[style] : style) || undefined;
  }

  private writeFormula(cell: Cell, formula: string, row: number, column: number, page: Nullable<ICellData>): void {
    const block = this.workbook.blockOf(this.id, row, column);
    const result = this.resultOf(this.workbook.filledCell(this.id, row, column) ?? page, formula, cellAddress({ row, column }));
    const stored = storedFormula(formula);
    const spills = block && (block.endRow > block.startRow || block.endColumn > block.startColumn);
    if (!spills && !callsOursAsTyped(formula)) {
      cell.value = { formula: stored, result } as FileCellValue;
      return;
    }
    const ref = block ? cellBlockAddress(block) : cellAddress({ row, column });
    cell.value = { formula: stored, result, shareType: 'array', ref } as unknown as FileCellValue;
    if (block && spills) this.writeFilled(block);
  }

  /** A formula with a function or name that only another program knows keeps the value that program gave. */
  private resultOf(page: Nullable<ICellData>, formula: string, address: string): FileCellValue {
    if (page?.v !== '#NAME?') return fileValue(page) ?? '';
    const known = this.workbook.valueInFile(this.worksheet.name, address, formula) ?? page.v;
    return isErrorText(known) ? ({ error: known } as CellErrorValue) : known;
  }

  private writeFilled(block: CellBlock): void {
    for (let row = block.startRow; row <= block.endRow; row++) {
      for (let column = block.startColumn; column <= block.endColumn; column++) {
        if (row === block.startRow && column === block.startColumn) continue;
        const value = fileValue(this.workbook.filledCell(this.id, row, column));
        if (value !== null) this.worksheet.getCell(row + 1, column + 1).value = value;
      }
    }
  }

  writeCells(): void {
    for (const [rowKey, cells] of Object.entries(this.sheet.cellData ?? {})) {
      for (const [columnKey, page] of Object.entries((cells ?? {}) as Record<string, ICellData>)) {
        const [row, column] = [Number(rowKey), Number(columnKey)];
        const cell = this.worksheet.getCell(row + 1, column + 1);
        const style = this.styleOf(page?.s);
        if (style) cell.style = fileStyle(style);
        const formula = this.workbook.formulaOf(this.id, row, column);
        if (formula) this.writeFormula(cell, formula, row, column, page);
        else if (fileValue(page) !== null) cell.value = fileValue(page);
      }
    }
  }

  private writeDefaults(): void {
    const { defaultColumnWidth: width, defaultRowHeight: height } = this.sheet;
    if (width) this.worksheet.properties.defaultColWidth = widthOfPixels(width);
    if (height) this.worksheet.properties.defaultRowHeight = height / POINT;
  }

  private writeRows(): void {
    const { cellData = {}, defaultRowHeight } = this.sheet;
    const rowData: NonNullable<IWorksheetData['rowData']> = { ...this.sheet.rowData };
    // What a filter hides is hidden in the file, which cannot say by what.
    for (const row of filterOf(this.workbook.data, this.id)?.cachedFilteredOut ?? []) rowData[row] = { ...rowData[row], hd: 1 };
    for (const [key, row] of Object.entries(rowData)) {
      const target = this.worksheet.getRow(Number(key) + 1);
      // The library writes no row that has neither cells nor a height.
      const height = row?.h ?? (row?.hd && !cellData[Number(key)] ? defaultRowHeight : undefined);
      if (height) target.height = height / POINT;
      if (row?.hd) target.hidden = true;
    }
  }

  writeLayout(): void {
    this.writeDefaults();
    const { columnData = {}, mergeData = [], freeze, showGridlines, hidden } = this.sheet;
    for (const [key, column] of Object.entries(columnData)) {
      const target = this.worksheet.getColumn(Number(key) + 1);
      if (column?.w) target.width = widthOfPixels(column.w);
      if (column?.hd) target.hidden = true;
      const style = this.styleOf(column?.s);
      if (style) Object.assign(target, fileStyle(style));
    }
    this.writeRows();
    for (const block of mergeData) this.worksheet.mergeCells(cellBlockAddress(block));
    const frozen = freeze && (freeze.xSplit > 0 || freeze.ySplit > 0);
    const split = frozen ? { state: 'frozen' as const, xSplit: freeze.xSplit, ySplit: freeze.ySplit } : {};
    this.worksheet.views = [{ ...split, showGridLines: showGridlines !== 0 }];
    if (hidden) this.worksheet.state = 'hidden';
    writePrinting(this.sheet, this.worksheet);
    const { conditionalFormats = [] } = (this.sheet.custom ?? {}) as CarriedOver;
    const size = { rowCount: this.sheet.rowCount ?? 0, columnCount: this.sheet.columnCount ?? 0 };
    writeCarriedOver(this.sheet.custom, savedFormats(this.workbook.data, this.id, conditionalFormats, size), this.worksheet);
    const filter = filterOf(this.workbook.data, this.id);
    if (filter) this.worksheet.autoFilter = cellBlockAddress(filter.ref);
  }
}

/**
 * Writes a workbook as .xlsx, the formulas of ours in the form Excel stores and with their values beside them, so that a reader
 * without the add-in sees the numbers.
 * @returns the file
 */
export async function writeXlsx(workbook: SavedWorkbook): Promise<Uint8Array> {
  const { Workbook } = await loadExcelJs();
  const file = new Workbook();
  for (const id of workbook.data.sheetOrder) {
    const sheet = workbook.data.sheets[id]!;
    const writer = new SheetWriter(workbook, id, sheet, file.addWorksheet(sheet.name));
    writer.writeLayout();
    writer.writeCells();
  }
  for (const { name, range } of definedNamesOf(workbook.data)) file.definedNames.add(range, name);
  return markDynamicArrays(tidyPackage(new Uint8Array(await file.xlsx.writeBuffer()), propertiesOf(workbook.data)));
}
