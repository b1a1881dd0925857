import { hostBlocks, type HostBlock } from '../../workbook/hostTable';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { findTable, type FoundTable } from './findTable';
import { catalogueState, type CatalogueState } from '../catalogue/catalogueState';
import type { Block } from '../../workbook/a1';

/** What the view works on. */
export type ColumnsView =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'none' }
  | {
      readonly status: 'ready';
      readonly used: RangeContent;
      readonly table: FoundTable;
      readonly hostTables: readonly HostBlock[];
      readonly catalogue: CatalogueState;
      /** The same as long as it is the same table, columns added to it or taken away again. */
      readonly id: string;
    };

const idOf = ({ sheet, block, headings }: FoundTable) => `${sheet}!${block.row},${block.column} ${headings.join('|')}`;

/** A view that was read anew, known again where its table only grew or shrank at the right since the last one. */
export function sameTable(found: ColumnsView, before: ColumnsView): ColumnsView {
  if (found.status !== 'ready' || before.status !== 'ready') return found;
  const [a, b] = [found.table, before.table];
  const shared = Math.min(a.headings.length, b.headings.length);
  const starts = a.sheet === b.sheet && a.block.row === b.block.row && a.block.column === b.block.column;
  const same = starts && a.headings.slice(0, shared).join('|') === b.headings.slice(0, shared).join('|');
  return same ? { ...found, id: before.id } : found;
}

/** Reads the table around the selection; with `stayOn`, the table around that block instead. */
export async function columnsView(workbook: Workbook, stayOn?: { sheet: string; block: Block }): Promise<ColumnsView> {
  const selection = stayOn ?? (await workbook.selection());
  const selected = 'block' in selection ? selection.block : { row: selection.row, column: selection.column, rows: 1, columns: 1 };
  const [used, tables, catalogue] = await Promise.all([
    workbook.used(selection.sheet),
    workbook.tables(selection.sheet),
    catalogueState(workbook),
  ]);
  const hostTables = hostBlocks(tables);
  const table = used && findTable(used, selected, hostTables);
  return used && table ? { status: 'ready', used, table, hostTables, catalogue, id: idOf(table) } : { status: 'none' };
}
