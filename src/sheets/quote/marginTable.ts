import { addressOf } from '../../workbook/a1';
import type { RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import { cellOf, dataRows, findTable, textOf } from '../table/sheetTable';

const HEADINGS = {
  name: /^(?:class|customer class|customer group|price class|price group)$/,
  margin: /^(?:margin|target margin|margin on price)$/,
} as const;

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

/** The table of classes of a sheet: it has the columns Class and Margin. */
function marginTable(content: RangeContent | undefined): MarginTable | undefined {
  const table = findTable(content, HEADINGS, ['name', 'margin']);
  if (!table || !content) return undefined;
  const rows = dataRows(table).filter(row => textOf(table, row, 'name') !== '');
  if (rows.length === 0) return undefined;
  const [first, last] = [rows[0]!, rows.at(-1)!];
  const range = (field: 'name' | 'margin') => ({
    sheet: content.sheet,
    address: addressOf({
      row: content.row + first,
      column: content.column + table.columns[field]!.index,
      rows: last - first + 1,
      columns: 1,
    }),
  });
  const classes = rows.map(row => {
    const margin = cellOf(table, row, 'margin');
    return { name: textOf(table, row, 'name'), margin: typeof margin === 'number' && margin < 1 ? margin : undefined };
  });
  return { classes, names: range('name'), margins: range('margin') };
}

/** The first sheet with a table of classes. */
export async function marginsOfWorkbook(workbook: Workbook): Promise<MarginTable | undefined> {
  for (const sheet of await workbook.sheets()) {
    const found = marginTable(await workbook.used(sheet));
    if (found) return found;
  }
  return undefined;
}
