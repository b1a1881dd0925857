import { blockOf } from '../../host/a1';
import type { RangeContent, Workbook } from '../../host/workbook';
import { findTable, type FoundTable } from './findTable';
import { catalogueState, type CatalogueState } from './catalogueState';
import type { Block } from '../../host/a1';

/** What the panel works on. */
export type ColumnsView =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'none' }
  | {
      readonly status: 'ready';
      readonly used: RangeContent;
      readonly table: FoundTable;
      readonly hostTables: readonly Block[];
      readonly catalogue: CatalogueState;
    };

/** Reads the table around the selection; with `stayOn`, the table around that block instead. */
export async function columnsView(workbook: Workbook, stayOn?: { sheet: string; block: Block }): Promise<ColumnsView> {
  const selection = stayOn ?? (await workbook.selection());
  const selected = 'block' in selection ? selection.block : { row: selection.row, column: selection.column, rows: 1, columns: 1 };
  const [used, tables, catalogue] = await Promise.all([
    workbook.used(selection.sheet),
    workbook.tables(selection.sheet),
    catalogueState(workbook),
  ]);
  const hostTables = tables.flatMap(table => blockOf(table.address) ?? []);
  const table = used && findTable(used, selected, hostTables);
  return used && table ? { status: 'ready', used, table, hostTables, catalogue } : { status: 'none' };
}
