import type { ICellData, Nullable, Univer, Workbook as EngineWorkbook, Worksheet } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import type { CellValue } from '../../workbook/workbook';
import { cellBlockAddress, type CellBlock } from '../xlsx/address';
import { readCell } from './cellReading';
import { cellAddress } from '../../workbook/a1';

interface Positions<T> {
  readonly [row: number]: { readonly [column: number]: Nullable<T> } | undefined;
}

function holdsCell(cell: Nullable<ICellData>): boolean {
  return !!cell && (!!cell.f || !!cell.si || !!cell.p || (cell.v !== null && cell.v !== undefined && cell.v !== ''));
}

/** Reads cells of one sheet as people see them, those included that a formula elsewhere fills. */
export class CellSource {
  private readonly model: FormulaDataModel;
  /** Formats of cells that have none of their own, by column; for rows that have none either. */
  private readonly formatOfColumn = new Map<number, string>();

  constructor(
    univer: Univer,
    private readonly workbook: EngineWorkbook,
    readonly sheet: Worksheet,
  ) {
    this.model = univer.__getInjector().get(FormulaDataModel);
  }

  private get filled(): Positions<ICellData> {
    return (this.model.getArrayFormulaCellData()[this.workbook.getUnitId()]?.[this.sheet.getSheetId()] ??
      {}) as Positions<ICellData>;
  }

  private get blocks(): Positions<CellBlock> {
    return (this.model.getArrayFormulaRange()[this.workbook.getUnitId()]?.[this.sheet.getSheetId()] ??
      {}) as Positions<CellBlock>;
  }

  /** Value of a zero-based cell; blank is "". */
  value(row: number, column: number): CellValue {
    return readCell(this.filled[row]?.[column] ?? this.sheet.getCellRaw(row, column));
  }

  /** Formula of a cell with its `=`, or "". */
  formula(row: number, column: number): string {
    return this.model.getFormulaStringByCell(row, column, this.sheet.getSheetId(), this.workbook.getUnitId()) ?? '';
  }

  /** Number format of a cell. */
  format(row: number, column: number): string {
    // The cell as it is kept: asking for the one that is drawn goes through everything that dresses it, ten times as slow.
    const cell = this.sheet.getCellRaw(row, column);
    return this.formatOf(cell, row, column);
  }

  private formatOf(cell: Nullable<ICellData>, row: number, column: number): string {
    const own = this.workbook.getStyles().getStyleByCell(cell)?.n?.pattern;
    if (own !== undefined) return own;
    const composed = () => this.sheet.getComposedCellStyleByCellData(row, column, cell)?.n?.pattern ?? 'General';
    if (this.sheet.getRowStyle(row, true)) return composed();
    let format = this.formatOfColumn.get(column);
    if (format === undefined) this.formatOfColumn.set(column, (format = composed()));
    return format;
  }

  /** Address of the cell whose formula fills this one; undefined where it is not filled from elsewhere. */
  filledFrom(row: number, column: number): string | undefined {
    for (const [fromRow, columns] of Object.entries(this.blocks)) {
      for (const [fromColumn, block] of Object.entries(columns ?? {}) as [string, Nullable<CellBlock>][]) {
        if (!block || (Number(fromRow) === row && Number(fromColumn) === column)) continue;
        const inside = row >= block.startRow && row <= block.endRow && column >= block.startColumn && column <= block.endColumn;
        if (inside) return cellAddress({ row: Number(fromRow), column: Number(fromColumn) });
      }
    }
    return undefined;
  }

  /** The smallest block that holds every filled cell; undefined where the sheet is empty. */
  used(): CellBlock | undefined {
    let [startRow, startColumn, endRow, endColumn] = [Infinity, Infinity, -1, -1];
    const take = (row: number, column: number, cell: Nullable<ICellData>) => {
      if (!holdsCell(cell)) return;
      startRow = Math.min(startRow, row);
      startColumn = Math.min(startColumn, column);
      endRow = Math.max(endRow, row);
      endColumn = Math.max(endColumn, column);
    };
    this.sheet.getCellMatrix().forValue((row, column, cell) => take(row, column, cell));
    for (const [row, columns] of Object.entries(this.filled)) {
      for (const [column, cell] of Object.entries(columns ?? {})) take(Number(row), Number(column), cell as Nullable<ICellData>);
    }
    return endRow < 0 ? undefined : { startRow, startColumn, endRow, endColumn };
  }

  /** Everything that stands in a block: long sheets are read often, so each cell is looked up once. */
  content(block: CellBlock) {
    const { filled } = this;
    const values: CellValue[][] = [];
    const formulas: string[][] = [];
    const formats: string[][] = [];
    for (let row = block.startRow; row <= block.endRow; row += 1) {
      const [rowValues, rowFormulas, rowFormats]: [CellValue[], string[], string[]] = [[], [], []];
      const spilled = filled[row];
      for (let column = block.startColumn; column <= block.endColumn; column += 1) {
        const cell = this.sheet.getCellRaw(row, column);
        rowValues.push(readCell(spilled?.[column] ?? cell));
        rowFormulas.push(cell?.f || cell?.si ? this.formula(row, column) : '');
        rowFormats.push(this.formatOf(cell, row, column));
      }
      values.push(rowValues);
      formulas.push(rowFormulas);
      formats.push(rowFormats);
    }
    const { startRow: row, startColumn: column } = block;
    return { sheet: this.sheet.getName(), address: cellBlockAddress(block), row, column, values, formulas, formats };
  }
}
