import { addressOf } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { RangeAddress, Workbook } from '../../workbook/workbook';
import { findTables } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { tableColumnsOf } from './tableColumnsOf';

/** What a table is to the views: job lines, or readings of crimps. */
export type TableHolds = 'lines' | 'readings';

/** A table that views can read. */
export interface TableToSelect extends RangeAddress {
  readonly holds: TableHolds;
}

async function tablesOfSheet(workbook: Workbook, sheet: string): Promise<TableToSelect[]> {
  const used = await workbook.used(sheet);
  if (!used) return [];
  const [tables, layout] = await Promise.all([workbook.tables(sheet), workbook.layout(sheet)]);
  const cells = new SheetCells(used, layout);
  return findTables(cells, hostBlocks(tables)).flatMap(table => {
    const { overall, readings, hose, quantity } = tableColumnsOf(cells, table);
    const canTake = overall !== undefined || readings !== undefined || (hose !== undefined && quantity !== undefined);
    return canTake ? [{ sheet, address: addressOf(table.block), holds: readings ? 'readings' : 'lines' }] : [];
  });
}

/** The tables of a workbook that views read and columns can be added to: with lengths, readings, or hoses and how many of them. */
export async function tablesToSelect(workbook: Workbook): Promise<readonly TableToSelect[]> {
  const found: TableToSelect[] = [];
  for (const sheet of await workbook.sheets()) found.push(...(await tablesOfSheet(workbook, sheet)));
  return found;
}
