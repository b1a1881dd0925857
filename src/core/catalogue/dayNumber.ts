const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[T ]\d{2}:\d{2}.*)?$/;
const MS_PER_DAY = 86_400_000;
/** 1970-01-01 in the sheet's day numbers, in which 1900 counts as a leap year. */
const UNIX_EPOCH_DAY = 25_569;
const LAST_DAY = 2_958_465;

/**
 * A date as the sheet's day number.
 * @param cell a day number (time of day is dropped) or ISO text
 * @returns undefined where it is no date
 * @example dayNumber('2025-03-14') // 45730
 */
export function dayNumber(cell: string | number): number | undefined {
  if (typeof cell === 'number') return cell >= 1 && cell < LAST_DAY + 1 ? Math.floor(cell) : undefined;
  const [, year, month, day] = ISO.exec(cell.trim())?.map(Number) ?? [];
  if (year === undefined || month === undefined || day === undefined) return undefined;
  const time = Date.UTC(year, month - 1, day);
  const back = new Date(time);
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day) return undefined;
  return time / MS_PER_DAY + UNIX_EPOCH_DAY;
}

/** A day number as ISO text. */
export function isoDate(day: number): string {
  return new Date((day - UNIX_EPOCH_DAY) * MS_PER_DAY).toISOString().slice(0, 10);
}
