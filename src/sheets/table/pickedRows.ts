import type { CellValue, RangeContent, Workbook } from '../../workbook/workbook';

/** The sheet that is selected in, and the rows of it that are picked. */
export interface PickedRows {
  readonly content: RangeContent | undefined;
  readonly sheet: string;
  /** Position in the content of the first selected row. */
  readonly near: number;
  /** Rows as the sheet shows them; undefined = the whole table, for a single selected cell means no choice. */
  readonly rows: ReadonlySet<number> | undefined;
}

/** Whether rows were chosen: two or more, or one of which several filled cells are selected. */
function isChoice(values: readonly (readonly CellValue[])[]): boolean {
  return values.length > 1 || values[0]!.filter(value => value !== '').length > 1;
}

/** Reads the selected sheet. Selected rows are a choice; one cell stands for the whole table around it. */
export async function pickedRows(workbook: Workbook): Promise<PickedRows> {
  const selection = await workbook.selection();
  const content = await workbook.used(selection.sheet);
  const count = selection.values.length;
  const rows = isChoice(selection.values)
    ? new Set(Array.from({ length: count }, (_, index) => selection.row + index + 1))
    : undefined;
  return { content, sheet: selection.sheet, near: Math.max(0, selection.row - (content?.row ?? 0)), rows };
}
