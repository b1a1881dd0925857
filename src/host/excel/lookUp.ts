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

/**
 * For each cell of a sheet the cell whose formula spills into it, all in one round; undefined where it is filled from nowhere else. Builds
 * without dynamic arrays have none.
 */
export async function spillParentsOf(
  context: Excel.RequestContext,
  sheet: string,
  addresses: readonly string[],
): Promise<readonly (RangeAddress | undefined)[]> {
  if (!Office.context.requirements.isSetSupported('ExcelApi', '1.12')) return addresses.map(() => undefined);
  const worksheet = context.workbook.worksheets.getItem(sheet);
  const parents = addresses.map(address => worksheet.getRange(address).getSpillParentOrNullObject());
  for (const parent of parents) parent.load('address');
  await context.sync();
  return parents.map((parent, index) => {
    const found = parent.isNullObject ? undefined : rangeOf(parent.address);
    return found?.address === addresses[index] ? undefined : found;
  });
}

/** The cell whose formula spills into this one. */
export async function spillParentOf(context: Excel.RequestContext, cell: RangeAddress): Promise<RangeAddress | undefined> {
  return (await spillParentsOf(context, cell.sheet, [cell.address]))[0];
}
