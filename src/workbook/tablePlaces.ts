import { addressOf, blockOf } from './a1';
import { hostBlocks, wholeTable } from './hostTable';
import type { HostTable, RangeAddress, Workbook } from './workbook';
import type { TableReference } from './catalogueFormula';

/** The whole of a host's table, as `[#All]` gives it: a row of totals among the others. */
function allOf(table: HostTable): RangeAddress {
  const [block] = hostBlocks([table]);
  return { sheet: table.sheet, address: addressOf(wholeTable(block!)) };
}

/** The rows of a host's table under its headings. */
function bodyOf({ sheet, address }: RangeAddress): RangeAddress {
  const block = blockOf(address)!;
  return { sheet, address: addressOf({ ...block, row: block.row + 1, rows: Math.max(1, block.rows - 1) }) };
}

/**
 * Where the tables stand that a CATALOGUE formula names.
 * @returns null where an argument is left out, undefined where a name or table is not in the workbook
 */
export async function tablePlaces(
  workbook: Workbook,
  references: readonly (TableReference | null)[],
): Promise<readonly (RangeAddress | null | undefined)[]> {
  const named = references.some(reference => reference && reference.kind !== 'range');
  const names = named ? await workbook.names() : [];
  const sheets = named ? await workbook.sheets() : [];
  const tables = (await Promise.all(sheets.map(sheet => workbook.tables(sheet)))).flat();
  return references.map(reference => {
    if (!reference) return null;
    if (reference.kind === 'range') return { sheet: reference.sheet, address: reference.address };
    const isIt = ({ name }: { readonly name: string }) => name.toLowerCase() === reference.name.toLowerCase();
    const table = tables.find(isIt);
    const name = names.find(isIt);
    if (reference.kind === 'name' && name) return name.at;
    if (!table) return name?.at;
    return reference.kind === 'table' && reference.part === 'all' ? allOf(table) : bodyOf(table);
  });
}
