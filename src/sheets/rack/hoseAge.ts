import { dayNumber, isoDate } from '../../core/units/sheetDate';
import type { CellValue } from '../../workbook/workbook';
import type { RackRow } from './rackRow';

/** A month or a year, and the quarter as hoses are marked with it. */
const MONTH = /^(\d{4})(?:-(0[1-9]|1[0-2]))?$/;
const QUARTER = /^(?:(\d{4})[ -]?Q([1-4])|Q([1-4])[ /-]?(\d{4})|([1-4])Q((?:20)?\d{2}))$/i;
/** `Mar 2025`, `03/2025`; `1/2026` may be a quarter. */
const MONTH_NAMED = /^\p{L}{3,9}\.?[ -]\d{4}$/u;
const MONTH_FIRST = /^(0[1-9]|[5-9]|1[0-2])[/.-](\d{4})$/;
/** Days of the sheet that a hose can have been made on: 1954 … 2099. */
const [FIRST_DAY, LAST_DAY] = [20_000, 73_050];
const [FIRST_YEAR, LAST_YEAR] = [1970, 2099];

function dayOfText(text: string): string {
  const [, year, month = '01'] = MONTH.exec(text) ?? [];
  if (year !== undefined) return `${year}-${month}-01`;
  const [, y1, q1, q2, y2, q3, y3 = ''] = QUARTER.exec(text) ?? [];
  const quarter = Number(q1 ?? q2 ?? q3 ?? 0);
  if (quarter > 0) return `${y1 ?? y2 ?? `20${y3.slice(-2)}`}-${String(quarter * 3 - 2).padStart(2, '0')}-01`;
  const [, month2, year2] = MONTH_FIRST.exec(text) ?? [];
  if (year2 !== undefined) return `${year2}-${month2!.padStart(2, '0')}-01`;
  const day = dayNumber(MONTH_NAMED.test(text) ? `1 ${text}` : text);
  return day === undefined ? '' : isoDate(day);
}

/**
 * Day of making as `2026-03-01`: a date, a month (`2026-03`, `Mar 2026`, `03/2026`), a year, a quarter (`2026 Q1`, `1Q26`), each by its first day; "" where the
 * cell is none of these, or a date that may be read either way round.
 */
export function madeDay(cell: CellValue): string {
  if (typeof cell === 'string') return dayOfText(cell.trim());
  if (typeof cell !== 'number') return '';
  if (Number.isInteger(cell) && cell >= FIRST_YEAR && cell <= LAST_YEAR) return `${cell}-01-01`;
  return cell > FIRST_DAY && cell < LAST_DAY + 1 ? isoDate(cell) : '';
}

/** True where hose is older than so many months: on the very day that ends them it is not yet. Undated hose is not judged. */
export function isTooOld({ made }: Pick<RackRow, 'made'>, limit: number | undefined, today: string): boolean {
  if (limit === undefined || made === '') return false;
  const months = monthsBetween(made, today);
  return months > limit || (months === limit && made.slice(-2) !== today.slice(-2));
}

/** Whole years and months from one day to another, as months. */
export function monthsBetween(from: string, to: string): number {
  const [y1, m1, d1] = from.split('-').map(Number) as [number, number, number];
  const [y2, m2, d2] = to.split('-').map(Number) as [number, number, number];
  return (y2 - y1) * 12 + (m2 - m1) - (d2 < d1 ? 1 : 0);
}
