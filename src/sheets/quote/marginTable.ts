import { nameOfCell } from '../../cells/sheetCell';
import { addressOf } from '../../workbook/a1';
import type { RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import { findTables } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { columnsByRole, type RoleList } from '../table/tableColumns';
import { tableRows } from '../table/tableRows';

const ROLES: RoleList<'name' | 'margin'> = [
  ['name', 'customerClass'],
  ['margin', 'margin'],
];

/** A customer class and the margin earned on it. */
export interface CustomerClass {
  readonly name: string;
  /** Share of the price: 0.4 = 40 %; undefined where the cell is no such share. */
  readonly margin: number | undefined;
}

/** The table of classes that the user keeps in a sheet. */
export interface MarginTable {
  readonly classes: readonly CustomerClass[];
  readonly names: RangeAddress;
  readonly margins: RangeAddress;
}

/** The table of classes of a sheet: it has the columns Class and Margin. Every row of it counts, hidden ones, too. */
function marginTable(content: RangeContent | undefined): MarginTable | undefined {
  if (!content) return undefined;
  const cells = new SheetCells(content);
  for (const table of findTables(cells)) {
    const { name, margin } = columnsByRole(table, ROLES);
    if (name === undefined || margin === undefined) continue;
    const rules = { name, keys: [name], takesHidden: true, isKnown: () => true };
    const rows = tableRows(cells, { ...table, below: [] }, rules).flatMap(({ row, kind }) => (kind === 'line' ? [row] : []));
    if (rows.length === 0) continue;
    const [first, last] = [rows[0]!, rows.at(-1)!];
    const range = (column: number) => ({
      sheet: content.sheet,
      address: addressOf({ row: first, column, rows: last - first + 1, columns: 1 }),
    });
    const classes = rows.map(row => {
      const share = cells.value(row, margin);
      return {
        name: nameOfCell(cells.value(row, name)),
        margin: typeof share === 'number' && share < 1 ? share : undefined,
      };
    });
    return { classes, names: range(name), margins: range(margin) };
  }
  return undefined;
}

/** The first sheet with a table of classes. */
export async function marginsOfWorkbook(workbook: Workbook): Promise<MarginTable | undefined> {
  for (const sheet of await workbook.sheets()) {
    const found = marginTable(await workbook.used(sheet));
    if (found) return found;
  }
  return undefined;
}
