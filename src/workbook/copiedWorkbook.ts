import type { Block } from './a1';
import type { CellValue } from './workbook';

/** One cell of a copy. */
export interface CopiedCell {
  /** What the cell shows; an error value shows its code. */
  readonly value: CellValue;
  /** With `=`; names the sheets as the copy does. Missing in cells that hold their value only. */
  readonly formula?: string;
  readonly format: string;
  readonly looks?: CopiedLooks;
}

/** How a cell of a copy looks: `kept` held a formula and now holds the value it showed. */
export type CopiedLooks = 'title' | 'heading' | 'kept' | 'text';

/** One sheet of a copy. */
export interface CopiedSheet {
  readonly name: string;
  /** Zero-based row and column of the first cell. */
  readonly row: number;
  readonly column: number;
  readonly cells: readonly (readonly CopiedCell[])[];
  /** Zero-based rows that are hidden. */
  readonly hiddenRows: readonly number[];
  /** Zero-based columns that are hidden. */
  readonly hiddenColumns: readonly number[];
  /** The whole sheet is hidden. */
  readonly isHidden: boolean;
  readonly merges: readonly Block[];
  /** Widths of the first columns from A on, in characters. */
  readonly widths: readonly number[];
}

/** A workbook that stands on its own: what is written to a file, or as new sheets. */
export interface CopiedWorkbook {
  readonly title: string;
  readonly sheets: readonly CopiedSheet[];
}
