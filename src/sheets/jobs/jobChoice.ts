import type { Block } from '../../workbook/a1';
import type { CellValue, Workbook } from '../../workbook/workbook';

/** Which rows of which sheet are meant; read again later, it means the same ones. */
export interface JobChoice {
  readonly sheet: string;
  /** Selected block; a single row of it means the whole table around it. */
  readonly block: Block;
  /** Several rows are selected: these only. */
  readonly isChoice: boolean;
}

/** Whether rows were chosen: two or more, or one of which several filled cells are selected. */
function isRowChoice(values: readonly (readonly CellValue[])[]): boolean {
  return values.length > 1 || values[0]!.filter(value => value !== '').length > 1;
}

/** The rows that are selected now. */
export async function jobChoice(workbook: Workbook): Promise<JobChoice> {
  const { sheet, row, column, values } = await workbook.selection();
  const block = { row, column, rows: values.length, columns: values[0]!.length };
  return { sheet, block, isChoice: isRowChoice(values) };
}
