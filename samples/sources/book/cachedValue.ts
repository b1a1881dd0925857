import './worksheetHost';
import type { CellErrorValue, CellValue, Worksheet } from 'exceljs';
import { blockOf } from '../../../src/workbook/a1';

/** Content of a cell as a host hands it to a function; an error as the host's error object; null is blank. */
export type CachedValue = string | number | boolean | null | CustomFunctions.Error;

const DAY_MS = 86_400_000;
const EPOCH_DAY = 25_569;

function plain(value: CellValue): CachedValue {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return value.getTime() / DAY_MS + EPOCH_DAY;
  if (typeof value !== 'object') return value;
  if ('error' in value) return new CustomFunctions.Error(value.error as CustomFunctions.ErrorCode);
  throw new Error('a cell that samples do not use as an argument');
}

/** The cells of a range, row by row. */
export function blockOfCells(sheet: Worksheet, range: string): CachedValue[][] {
  const { row: top, column: left, rows, columns } = blockOf(range)!;
  const block: CachedValue[][] = [];
  for (let row = top + 1; row <= top + rows; row++) {
    const cells: CachedValue[] = [];
    for (let column = left + 1; column <= left + columns; column++) {
      const cell = sheet.findCell(row, column);
      // The library leaves results of 0 and "" out of a formula's value, not out of its result.
      cells.push(cell ? plain(cell.formula ? (cell.result as CellValue) : cell.value) : null);
    }
    block.push(cells);
  }
  return block;
}

/** A result of our functions as a file keeps it. */
export function storedValue(result: unknown): string | number | boolean | CellErrorValue {
  if (result instanceof CustomFunctions.Error) return { error: result.code } as CellErrorValue;
  if (typeof result === 'string' || typeof result === 'number' || typeof result === 'boolean') return result;
  throw new Error(`a result that no cell can hold: ${String(result)}`);
}
