import type { CopiedCell } from '../../../workbook/copiedWorkbook';
import type { SheetCells } from '../../table/sheetCells';

/** Cells that a sheet of the copy has besides those of the workbook, or in their place. */
export class AddedCells {
  private readonly cells = new Map<string, { readonly row: number; readonly column: number; readonly cell: CopiedCell }>();
  private nextColumn: number;
  private nextRow: number;

  constructor(
    readonly nameInCopy: string,
    source: SheetCells,
  ) {
    // One column is left free, so that nobody takes the helper columns for a part of the table.
    this.nextColumn = source.lastColumn + 2;
    this.nextRow = source.lastRow + 1;
  }

  newColumn(): number {
    return this.nextColumn++;
  }

  /** First row that is free on the whole sheet, at or below `wanted`. */
  freeRow(wanted: number): number {
    return Math.max(wanted, this.nextRow);
  }

  takeRows(first: number, count: number): void {
    this.nextRow = Math.max(this.nextRow, first + count);
  }

  put(row: number, column: number, cell: CopiedCell): void {
    this.cells.set(`${row} ${column}`, { row, column, cell });
  }

  get(row: number, column: number): CopiedCell | undefined {
    return this.cells.get(`${row} ${column}`)?.cell;
  }

  all(): readonly { readonly row: number; readonly column: number; readonly cell: CopiedCell }[] {
    return [...this.cells.values()];
  }
}
