import { registeredFunctions } from '../../workbook/registeredFunctions';
import type { CellValue } from '../../workbook/workbook';
import type { ArgumentCells } from './argumentCells';
import { plainValue } from '../../workbook/cellWords';

/** Cells of all arguments that are worked out twice for this; more would be felt at each selection. */
const MOST_CELLS = 2000;

const withZeros = (cells: ArgumentCells): ArgumentCells => cells && cells.map(row => row.map(cell => cell ?? 0));

/** A value of the function as a cell shows it. */
const shownAs = (value: unknown): unknown => {
  const code = (value as { code?: unknown } | null | undefined)?.code;
  return typeof code === 'string' ? code : (value ?? '');
};

async function valueAt(id: string, cells: readonly ArgumentCells[], row: number, column: number): Promise<unknown> {
  try {
    const result = (await registeredFunctions()![id]!(...cells)) as unknown[][];
    return shownAs(result[row]?.[column]);
  } catch (error) {
    return shownAs(error);
  }
}

/** What the strip says of such a cell. */
export const BLANKS_AS_ZERO =
  'This Excel hands blank cells to the function as 0, so that this is not the right value. Update Excel (File, Account, Update Options), or fill the blank cells that it reads.';

/**
 * Whether a cell shows what its function gives with 0 for each blank cell, and something else with blanks: builds of Excel exist that hand
 * them over so (OfficeDev/office-js issues 1951, 4702 and 5262).
 * @param shown the cell's value; row and column: its place in the function's result
 */
export async function showsBlanksAsZero(
  id: string,
  cells: readonly (ArgumentCells | undefined)[],
  { shown, row, column }: { readonly shown: CellValue; readonly row: number; readonly column: number },
): Promise<boolean> {
  const known = cells.filter(cell => cell !== undefined);
  const all = known.flatMap(block => block ?? []).flat();
  if (known.length < cells.length || all.length > MOST_CELLS || !all.includes(null)) return false;
  if (!registeredFunctions()?.[id]) return false;
  const value = plainValue(shown);
  if ((await valueAt(id, known, row, column)) === value) return false;
  return (await valueAt(id, known.map(withZeros), row, column)) === value;
}
