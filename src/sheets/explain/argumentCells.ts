import { blockOf } from '../../workbook/a1';
import type { CellValue, RangeAddress, RangeContent, Workbook } from '../../workbook/workbook';
import type { WrittenArgument } from '../../workbook/functionCall';

/** Cells of an argument as a worksheet function takes them: null is omitted. */
export type ArgumentCells = readonly (readonly unknown[])[] | null;

const MOST_ROWS = 20_000;

function asPassed(value: CellValue): unknown {
  if (typeof value === 'object') return { type: 'Error', basicType: 'Error', basicValue: value.error };
  return value === '' ? null : value;
}

/** What was read, filled up with blanks to the shape that was asked for. */
function fullBlock(content: RangeContent, asked: string): unknown[][] {
  const block = blockOf(asked);
  const rows = Math.min(block?.rows ?? content.values.length, Math.max(MOST_ROWS, content.values.length));
  const columns = block?.columns ?? content.values[0]!.length;
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => asPassed(content.values[row]?.[column] ?? '')),
  );
}

/**
 * Reads the cells of all arguments of a call in one batch.
 * @param sheet the sheet that the formula stands on
 * @returns per argument its cells, or undefined where it is an expression that only the host can work out
 */
export async function argumentCells(
  workbook: Workbook,
  sheet: string,
  written: readonly WrittenArgument[],
): Promise<readonly (ArgumentCells | undefined)[]> {
  const names = written.some(({ kind }) => kind === 'name') ? await workbook.names() : [];
  const addressOf = (argument: WrittenArgument): RangeAddress | undefined => {
    if (argument.kind === 'reference') return { sheet: argument.sheet ?? sheet, address: argument.address };
    if (argument.kind === 'name') return names.find(({ name }) => name.toLowerCase() === argument.text.toLowerCase())?.at;
    return undefined;
  };
  const addresses = written.map(addressOf);
  const contents = await workbook.read(addresses.filter((address): address is RangeAddress => address !== undefined));
  const next = contents[Symbol.iterator]();
  return written.map((argument, index) => {
    if (argument.kind === 'omitted') return null;
    if (argument.kind === 'constant') return argument.cells;
    const address = addresses[index];
    return address ? fullBlock(next.next().value as RangeContent, address.address) : undefined;
  });
}
