import type { Batch, Block } from './batch';
import { guarded } from './guarded';
import { rangeOf } from './rangeOf';

/** A table of Excel; `rows` counts headings and totals, as Excel's own range of a table does. */
interface ExcelTable extends Block {
  readonly name: string;
  readonly showHeaders: boolean;
  readonly showTotals: boolean;
}

/** Excel tables by sheet; a test sets them, and takes them away. */
export const excelTables: Record<string, readonly ExcelTable[]> = {};

export function tablesOf(batch: Batch, sheet: string): object {
  const tableOf = (table: ExcelTable) =>
    Object.assign(
      guarded(batch.pending, () => ({ ...table }), {}),
      { ...table, getRange: () => rangeOf(batch, sheet, () => table) },
    );
  return guarded(batch.pending, () => ({ items: (excelTables[batch.book.sheet(sheet).name] ?? []).map(tableOf) }), {});
}
