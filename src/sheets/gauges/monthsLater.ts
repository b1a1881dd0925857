import { MS_PER_DAY, UNIX_EPOCH_DAY } from '../../core/units/sheetDate';

/** The same day so many months later; of a month that is too short its last day: 31 August + 6 months = 28 or 29 February. */
export function monthsLater(day: number, months: number): number {
  const from = new Date((Math.floor(day) - UNIX_EPOCH_DAY) * MS_PER_DAY);
  const month = from.getUTCMonth() + months;
  const last = new Date(Date.UTC(from.getUTCFullYear(), month + 1, 0)).getUTCDate();
  return Date.UTC(from.getUTCFullYear(), month, Math.min(from.getUTCDate(), last)) / MS_PER_DAY + UNIX_EPOCH_DAY;
}
