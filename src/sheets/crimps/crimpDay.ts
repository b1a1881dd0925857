import { dayNumber } from '../../core/catalogue/dayNumber';

/** Day, month and year with points between them; with slashes it may be either way round, so that is not read. */
const POINTS = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})(?:[ T].*)?$/;
const YEAR_FIRST = /^(\d{4})[/.](\d{1,2})[/.](\d{1,2})(?:[ T].*)?$/;

const iso = (year: string, month: string, day: string) => `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;

/**
 * The day of a crimp: a date of the sheet, or text like `2026-03-14`, `14.03.2026`, `2026/3/14`.
 * @returns undefined where it is no date, or could be two
 */
export function crimpDay(cell: string | number): number | undefined {
  if (typeof cell === 'number') return dayNumber(cell);
  const [, day, month, year] = POINTS.exec(cell.trim()) ?? [];
  if (year !== undefined) return dayNumber(iso(year, month!, day!));
  const [, first, second, third] = YEAR_FIRST.exec(cell.trim()) ?? [];
  return dayNumber(first === undefined ? cell : iso(first, second!, third!));
}
