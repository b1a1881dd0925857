import {
  BorderStyleTypes,
  CellValueType,
  generateRandomId,
  ICommandService,
  type ICellData,
  type IStyleData,
} from '@univerjs/core';
import {
  InsertDefinedNameCommand,
  SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  SetColWidthCommand,
  SetStyleCommand,
} from '@univerjs/sheets';
import type { FWorkbook, FWorksheet } from '@univerjs/sheets/facade';
import type { CellStyle, Change, RangeAddress } from '../../workbook/workbook';
import { cellBlockOf, type CellBlock } from '../xlsx/address';
import { textCell } from './textCell';
import { isCellChange, type CellChange } from '../../workbook/cellChange';

const NEW_SHEET_ROWS = 1000;
const NEW_SHEET_COLUMNS = 26;
const [SPARE_ROWS, SPARE_COLUMNS] = [50, 5];
/** As in Excel, so that rows grow with wrapped text in a saved file. */
const NEW_SHEET_SIZES = { defaultColumnWidth: 64, defaultRowHeight: 20 } as const;
/** The port's widths and heights are in points, the page's in pixels. */
const PIXELS_A_POINT = 4 / 3;
const NO_CONTENT = { v: null, f: null, si: null, p: null, t: null, custom: null };

export type CellTable<T> = readonly (readonly T[])[];

function valueCell(value: string | number | boolean): ICellData {
  if (value === '') return { ...NO_CONTENT };
  if (typeof value === 'number') return { ...NO_CONTENT, v: value, t: CellValueType.NUMBER };
  if (typeof value === 'boolean') return { ...NO_CONTENT, v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { ...NO_CONTENT, ...textCell(value) };
}

function formulaCell(formula: string): ICellData {
  return formula === '' ? { ...NO_CONTENT } : { ...NO_CONTENT, f: formula.startsWith('=') ? formula : `=${formula}` };
}

const LINE = { s: BorderStyleTypes.THIN, cl: { rgb: '#8A959D' } };

function pageStyle({ bold, fill, color, wrap, fontSize, border }: CellStyle): IStyleData {
  return {
    ...(fontSize !== undefined && { fs: fontSize }),
    ...(border && { bd: border === 'all' ? { t: LINE, b: LINE, l: LINE, r: LINE } : { b: LINE } }),
    ...(bold !== undefined && { bl: bold ? 1 : 0 }),
    ...(fill !== undefined && { bg: { rgb: fill } }),
    ...(color !== undefined && { cl: { rgb: color } }),
    ...(wrap !== undefined && { tb: wrap ? 3 : 1 }),
  };
}

export function sizeOf({ startRow, endRow, startColumn, endColumn }: CellBlock): [number, number] {
  return [endRow - startRow + 1, endColumn - startColumn + 1];
}

/** A longer or wider grid. (Inserting rows or columns would select them, and take looks that stand there already further on.) */
function makeRoom(sheet: FWorksheet, { endRow, endColumn }: CellBlock): void {
  if (sheet.getMaxRows() <= endRow) sheet.setRowCount(endRow + SPARE_ROWS);
  if (sheet.getMaxColumns() <= endColumn) sheet.setColumnCount(endColumn + SPARE_COLUMNS);
}

type StyleChange = Extract<Change, { kind: 'style' }>;
type OtherChange = Exclude<Change, CellChange | StyleChange>;

export const isStyleChange = (change: Change): change is StyleChange => change.kind === 'style';

const cellsOf = (change: CellChange): CellTable<ICellData> =>
  change.kind === 'values' ? change.values.map(row => row.map(valueCell)) : change.formulas.map(row => row.map(formulaCell));

export class ChangeWriter {
  constructor(
    private readonly workbook: FWorkbook,
    private readonly commands: ICommandService,
  ) {}

  private sheetAt({ sheet, address }: RangeAddress): { sheet: FWorksheet; block: CellBlock } {
    return { sheet: this.workbook.getSheetByName(sheet)!, block: cellBlockOf(address)! };
  }

  /** Cells of one sheet, in one go: each go makes the engine look through every formula of the workbook. */
  private setCells(changes: readonly CellChange[]): void {
    const matrix: Record<number, Record<number, ICellData>> = {};
    const { sheet } = this.sheetAt(changes[0]!.at);
    for (const change of changes) {
      const { block } = this.sheetAt(change.at);
      makeRoom(sheet, block);
      cellsOf(change).forEach((cells, row) => {
        Object.assign(
          (matrix[block.startRow + row] ??= {}),
          Object.fromEntries(cells.map((cell, column) => [block.startColumn + column, cell])),
        );
      });
    }
    const { block } = this.sheetAt(changes[0]!.at);
    sheet.getRange(block.startRow, block.startColumn).setValues(matrix);
  }

  private setName(name: string, { sheet, address }: RangeAddress): void {
    const [first, last] = address.toUpperCase().replace(/\$/g, '').split(':');
    const absolute = [first!, ...(last ? [last] : [])].map(cell => cell.replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2')).join(':');
    const reference = `'${sheet.replace(/'/g, "''")}'!${absolute}`;
    const known = this.workbook.getDefinedNames().find(defined => defined.getName().toUpperCase() === name.toUpperCase());
    if (known) known.setFormula(reference);
    else {
      // The facade refuses a name that some sheet has too; spreadsheets allow it.
      const parameters = {
        id: generateRandomId(10),
        unitId: this.workbook.getId(),
        name,
        formulaOrRefString: reference,
        localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
        comment: '',
      };
      this.commands.syncExecuteCommand(InsertDefinedNameCommand.id, parameters);
    }
  }

  /** Writing a style as a cell would take the cell's formula away. */
  private setPageStyle({ sheet, block }: { sheet: FWorksheet; block: CellBlock }, style: IStyleData): void {
    for (const [type, value] of Object.entries(style)) {
      const parameters = { unitId: this.workbook.getId(), subUnitId: sheet.getSheetId(), range: block, style: { type, value } };
      this.commands.syncExecuteCommand(SetStyleCommand.id, parameters);
    }
  }

  /** Looks of cells of one sheet; widths in one go: after each go the engine measures every row anew. */
  private setStyles(changes: readonly StyleChange[]): void {
    const widths: Record<number, number> = {};
    const { sheet } = this.sheetAt(changes[0]!.at);
    for (const { at, style } of changes) {
      const { block } = this.sheetAt(at);
      this.setPageStyle({ sheet, block }, pageStyle(style));
      if (style.columnWidth !== undefined) {
        const width = Math.round(style.columnWidth * PIXELS_A_POINT);
        for (let column = block.startColumn; column <= block.endColumn; column++) widths[column] = width;
      }
      if (style.rowHeight !== undefined) {
        sheet.setRowHeightsForced(block.startRow, sizeOf(block)[0], Math.round(style.rowHeight * PIXELS_A_POINT));
      }
    }
    this.setWidths(sheet, widths);
  }

  private setWidths(sheet: FWorksheet, widths: Readonly<Record<number, number>>): void {
    const columns = Object.keys(widths).map(Number);
    if (columns.length === 0) return;
    const range = {
      startColumn: Math.min(...columns),
      endColumn: Math.max(...columns),
      startRow: 0,
      endRow: sheet.getMaxRows() - 1,
    };
    // The command declares one width, and hands what it gets to its mutation, which takes one for each column, too.
    const parameters = { unitId: this.workbook.getId(), subUnitId: sheet.getSheetId(), ranges: [range], value: widths };
    this.commands.syncExecuteCommand(SetColWidthCommand.id, parameters);
  }

  /** Changes of one kind of thing, as `together` has them. */
  write(changes: readonly Change[]): void {
    const cells = changes.filter(isCellChange);
    const styles = changes.filter(isStyleChange);
    if (cells.length > 0) this.setCells(cells);
    else if (styles.length > 0) this.setStyles(styles);
    else for (const change of changes) this.writeOne(change as OtherChange);
  }

  private writeOne(change: OtherChange): void {
    switch (change.kind) {
      case 'addSheet': {
        const active = this.workbook.getActiveSheet();
        this.workbook.create(change.sheet, NEW_SHEET_ROWS, NEW_SHEET_COLUMNS, { sheet: NEW_SHEET_SIZES });
        this.workbook.setActiveSheet(active);
        break;
      }
      case 'removeSheet':
        this.workbook.deleteSheet(this.workbook.getSheetByName(change.sheet)!);
        break;
      case 'format':
        return this.setPageStyle(this.sheetAt(change.at), { n: { pattern: change.numberFormat } });
      case 'page': {
        const sheet = this.workbook.getSheetByName(change.sheet)!;
        sheet.setCustomMetadata({ ...sheet.getCustomMetadata(), page: change.page });
        break;
      }
      case 'chart':
      case 'picture':
        // The page has neither; the view that asks for one says so.
        return;
      case 'name':
        return this.setName(change.name, change.refersTo);
    }
  }
}
