import type { Cell, CellValue } from 'exceljs';
import type { CachedValue } from './fileCell';

const MILLISECONDS_A_DAY = 86_400_000;
/** Day number of 1 January 1970. */
const EPOCH_DAY = 25_569;

/** A date as the day number a cell holds. */
function dayNumber(date: Date): number {
  return Number((date.getTime() / MILLISECONDS_A_DAY + EPOCH_DAY).toFixed(9));
}

/** Plain value of what a file's cell holds: text of rich text and links, day numbers of dates, error values as text; null where blank. */
export function plainFileValue(value: CellValue | undefined): CachedValue | null {
  if (value === null || value === undefined) return null;
  if (value instanceof Date) return dayNumber(value);
  if (typeof value !== 'object') return value;
  if ('richText' in value) return value.richText.map(run => run.text).join('');
  if ('error' in value) return value.error;
  if ('text' in value) return plainFileValue(value.text as CellValue);
  if ('result' in value) return plainFileValue(value.result as CellValue);
  return null;
}

/** Formula text of a cell as the file stores it, shared formulas worked out; undefined where it holds none. */
export function formulaText(cell: Cell): string | undefined {
  return cell.formula || undefined;
}
