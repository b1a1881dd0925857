import type { Cell, Worksheet } from 'exceljs';

interface FileRow {
  readonly _cells: readonly (Cell | undefined)[];
  readonly height?: number;
  readonly hidden: boolean;
}

/** Every row that the file mentions, blank ones included (the library's own iterators leave those out or make up others). */
export function eachRow(worksheet: Worksheet, visit: (row: FileRow, index: number) => void): void {
  const { _rows: rows } = worksheet as unknown as { _rows: (FileRow | undefined)[] };
  rows.forEach((row, index) => row && visit(row, index));
}

/** Every cell that the file mentions, blank ones with a style included. */
export function eachCell(worksheet: Worksheet, visit: (cell: Cell, row: number, column: number) => void): void {
  eachRow(worksheet, (row, rowIndex) => row._cells.forEach((cell, column) => cell && visit(cell, rowIndex, column)));
}
