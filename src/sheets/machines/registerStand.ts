import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import { machinesTable } from '../../core/catalogue/tables/machinesTable';
import { addressOf } from '../../workbook/a1';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { freeSheetName } from '../print/freeSheetName';
import type { RegisterTable } from './registerPlace';

/** Where the register of dials stands. */
export type RegisterStand =
  /** In a table that CATALOGUE reads, or on a sheet Machines that it could read. */
  | { readonly kind: 'read' | 'unread'; readonly table: RegisterTable; readonly sheet: RangeContent }
  /** Nowhere yet: it can be made on this sheet, which is blank or not there. */
  | { readonly kind: 'none'; readonly sheet: string; readonly exists: boolean };

const TELLING = ['machine', 'dial'] as const;

/** The table with the headings Machine and Dial on a sheet, down to its last used row. */
function tableOn(content: RangeContent): RegisterTable | undefined {
  const wanted = TELLING.map(field => headingKey(machinesTable.fields[field].heading));
  const top = content.values.findIndex(row => {
    const keys = row.map(cell => (typeof cell === 'string' ? headingKey(splitHeading(cell).name) : ''));
    return wanted.every(key => keys.includes(key));
  });
  if (top < 0) return undefined;
  const row = content.row + top;
  const [values, formulas, formats] = [content.values.slice(top), content.formulas.slice(top), content.formats.slice(top)];
  const block = { row, column: content.column, rows: values.length, columns: values[0]!.length };
  const at = { sheet: content.sheet, address: addressOf(block) };
  return { at, content: { ...content, ...at, row, values, formulas, formats } };
}

const isBlank = ({ values }: RangeContent) => values.every(row => row.every(cell => cell === ''));

/** Finds the register of dials of a workbook, or the sheet that it can be made on. */
export async function registerStand(workbook: Workbook, standing: WorkbookCatalogue, today: string): Promise<RegisterStand> {
  const read = standing.tables.find(each => each.table === 'machines');
  if (read) {
    const sheet = await workbook.used(read.at.sheet);
    if (sheet && !isBlank(sheet)) return { kind: 'read', table: read, sheet };
    return { kind: 'none', sheet: read.at.sheet, exists: true };
  }
  const sheets = await workbook.sheets();
  const name = sheets.find(each => each.toLowerCase() === machinesTable.sheet.toLowerCase());
  const content = name === undefined ? undefined : await workbook.used(name);
  const table = content && tableOn(content);
  if (table) return { kind: 'unread', table, sheet: content };
  if (name !== undefined && (!content || isBlank(content))) return { kind: 'none', sheet: name, exists: true };
  return { kind: 'none', sheet: freeSheetName(machinesTable.sheet, sheets, today), exists: false };
}
