import { addressOf, blockOf, splitReference } from '../../workbook/a1';
import type { HostTable, RangeAddress } from '../../workbook/workbook';

function rangeOf(reference: string): RangeAddress {
  const { sheet = '', address } = splitReference(reference.replace(/^=/, ''));
  return { sheet, address: address.replace(/\$/g, '') };
}

/** Names of the worksheets, in order. */
export async function sheetsOf(context: Excel.RequestContext): Promise<readonly string[]> {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  return worksheets.items.map(worksheet => worksheet.name);
}

/** One block of one sheet. A quoted sheet may have brackets and commas, as `'Parts (2)'`; `'First:Last'!A1` is of several sheets. */
const PLAIN_RANGE = /^=(?:'(?:[^'[\]:]|'')+'|[^'()[\],:!]+)!\$?[A-Z\d]+(?:\$?\d+)?(?::\$?[A-Z\d]+(?:\$?\d+)?)?$/i;

/** Workbook-scoped names of plain ranges; names of formulas and constants are left out. */
export async function namesOf(context: Excel.RequestContext): Promise<readonly { name: string; at: RangeAddress }[]> {
  const { names } = context.workbook;
  names.load('items/name,items/type,items/formula');
  await context.sync();
  return names.items
    .filter(item => item.type === 'Range' && PLAIN_RANGE.test(item.formula))
    .map(item => ({ name: item.name, at: rangeOf(item.formula) }));
}

/** Excel tables of a sheet, with their heading rows; a row of totals is left out, a table without headings is none to us. */
export async function tablesOf(context: Excel.RequestContext, sheet: string): Promise<readonly HostTable[]> {
  const { tables } = context.workbook.worksheets.getItem(sheet);
  tables.load('items/name,items/showHeaders,items/showTotals');
  await context.sync();
  const shown = tables.items.filter(({ showHeaders }) => showHeaders);
  const ranges = shown.map(table => table.getRange());
  if (ranges.length === 0) return [];
  for (const range of ranges) range.load('address');
  await context.sync();
  return ranges.map((range, index) => {
    const { name, showTotals } = shown[index]!;
    const { sheet, address } = rangeOf(range.address);
    const block = blockOf(address)!;
    return showTotals
      ? { name, sheet, address: addressOf({ ...block, rows: block.rows - 1 }), hasTotals: true }
      : { name, sheet, address };
  });
}

/** The cell whose formula spills into this one. Builds without dynamic arrays have none. */
export async function spillParentOf(context: Excel.RequestContext, cell: RangeAddress): Promise<RangeAddress | undefined> {
  if (!Office.context.requirements.isSetSupported('ExcelApi', '1.12')) return undefined;
  const parent = context.workbook.worksheets.getItem(cell.sheet).getRange(cell.address).getSpillParentOrNullObject();
  parent.load('address');
  await context.sync();
  if (parent.isNullObject) return undefined;
  const found = rangeOf(parent.address);
  return found.address === cell.address ? undefined : found;
}
