import { addressOf, blockOf } from '../../workbook/a1';

/** A block of cells as the spreadsheet of the page counts it: zero-based, ends included. */
export interface CellBlock {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

/** A1-style address of a block: `B2:F20`, or `C7` for one cell. */
export function cellBlockAddress({ startRow, startColumn, endRow, endColumn }: CellBlock): string {
  return addressOf({ row: startRow, column: startColumn, rows: endRow - startRow + 1, columns: endColumn - startColumn + 1 });
}

/** The block of an A1-style address (dollars allowed, no sheet), whole columns and rows included; undefined where it is none. */
export function cellBlockOf(address: string): CellBlock | undefined {
  const block = blockOf(address);
  return (
    block && {
      startRow: block.row,
      startColumn: block.column,
      endRow: block.row + block.rows - 1,
      endColumn: block.column + block.columns - 1,
    }
  );
}
