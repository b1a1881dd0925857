import type { Block } from '../../workbook/a1';
import { hostBlocks, type HostBlock } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { findTables, tableAt, type FoundTable } from './findTables';
import { SheetCells } from './sheetCells';
import { tableAnswers } from './tableAnswers';

/** The table that a selection means, with the cells of its sheet. */
export interface SelectedTable {
  readonly cells: SheetCells;
  readonly table: FoundTable;
  /** All tables of the sheet in the host's own sense. */
  readonly hostTables: readonly HostBlock[];
}

/** Reads the table under the selection, or under a block that is given; undefined where there is none. */
export async function selectedTable(
  workbook: Workbook,
  at?: { readonly sheet: string; readonly block: Block },
): Promise<SelectedTable | undefined> {
  const selection = at ? undefined : await workbook.selection();
  const sheet = at?.sheet ?? selection!.sheet;
  const block = at?.block ?? { row: selection!.row, column: selection!.column, rows: 1, columns: 1 };
  const used = await workbook.used(sheet);
  if (!used) return undefined;
  const [tables, layout] = await Promise.all([workbook.tables(sheet), workbook.layout(sheet)]);
  const cells = new SheetCells(used, layout);
  const hostTables = hostBlocks(tables);
  const said = await Promise.all((['jobs', 'crimps'] as const).map(kind => tableAnswers(workbook, kind, sheet)));
  const explained = new Map(said.flatMap(({ role }) => [...role]));
  const table = tableAt(findTables(cells, hostTables, explained), block);
  return table && { cells, table, hostTables };
}
