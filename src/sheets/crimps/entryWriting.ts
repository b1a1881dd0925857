import type { CellValue } from '../../workbook/workbook';

/** One cell before and after. */
export interface EnteredCell {
  readonly address: string;
  readonly before: CellValue;
  readonly after: number | string;
  /** Number format that it gets with its value: of a day in a column of numbers. */
  readonly format?: string;
}

/** What an entry writes into its row. */
export interface EntryWriting {
  readonly sheet: string;
  readonly cells: readonly EnteredCell[];
}
