import type { RangeContent, Workbook } from '../../host/workbook';

/** The sheet that is selected in, and the rows of it that are picked. */
export interface PickedRows {
  readonly content: RangeContent | undefined;
  readonly sheet: string;
  /** Position in the content of the first selected row. */
  readonly near: number;
  /** Rows as the sheet shows them; undefined = the whole table, for a single selected row means no choice. */
  readonly rows: ReadonlySet<number> | undefined;
}

/** Reads the selected sheet. Two or more selected rows are a choice; one cell or row stands for the whole table around it. */
export async function pickedRows(workbook: Workbook): Promise<PickedRows> {
  const selection = await workbook.selection();
  const content = await workbook.used(selection.sheet);
  const count = selection.values.length;
  const rows = count > 1 ? new Set(Array.from({ length: count }, (_, index) => selection.row + index + 1)) : undefined;
  return { content, sheet: selection.sheet, near: Math.max(0, selection.row - (content?.row ?? 0)), rows };
}
