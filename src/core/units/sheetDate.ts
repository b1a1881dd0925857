export const MS_PER_DAY = 86_400_000;
/** 1970-01-01 in the sheet's day numbers, in which 1900 counts as a leap year. */
export const UNIX_EPOCH_DAY = 25_569;
const LAST_DAY = 2_958_465;
/** 2000-01-01 … 2099-12-31: a whole number among them, where a short length is due, is a date that the sheet made of a fraction. */
export const FIRST_DATE = 36_526;
export const LAST_DATE = 73_050;

/** What a text is as a date: day numbers with the time of day as a fraction; two of them where it may be read either way round. */
type DateReadings = readonly [] | readonly [number] | readonly [number, number];

const TIME = /(?:[T ]\s*(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*(am|pm)?(?:\s*(?:z|[+-]\d{2}:?\d{2}))?)?$/i.source;
const dated = (date: string) => new RegExp(`^${date}${TIME}`, 'i');

const YEAR_FIRST = dated(String.raw`(?<year>\d{4})(?<mark>[-/.])(?<month>\d{1,2})\k<mark>(?<day>\d{1,2})`);
const POINTS = dated(String.raw`(?<day>\d{1,2})\.\s?(?<month>\d{1,2})\.\s?(?<year>\d{4})`);
/** Day or month first: only where one of the two is above 12, or both are equal, does the text itself say which. */
const EITHER = dated(String.raw`(?<first>\d{1,2})(?<mark>[-/])(?<second>\d{1,2})\k<mark>(?<year>\d{4})`);
const DAY_NAMED = dated(String.raw`(?<day>\d{1,2})\.?[- ](?<name>[a-z]{3,9})\.?,?[- ](?<year>\d{4})`);
const NAME_FIRST = dated(String.raw`(?<name>[a-z]{3,9})\.?[ ](?<day>\d{1,2}),?[ ](?<year>\d{4})`);
const MONTHS = 'january february march april may june july august september october november december'.split(' ');

function dayOf(year: number, month: number, day: number): number | undefined {
  const time = Date.UTC(year, month - 1, day);
  const back = new Date(time);
  const isReal = back.getUTCFullYear() === year && back.getUTCMonth() === month - 1 && back.getUTCDate() === day;
  return isReal ? time / MS_PER_DAY + UNIX_EPOCH_DAY : undefined;
}

/** The time of day as a part of the day; undefined where there is no such time. */
function partOfDay([hours, minutes, seconds, half]: readonly (string | undefined)[]): number | undefined {
  if (hours === undefined) return 0;
  const [given, minute, second] = [Number(hours), Number(minutes), Number(seconds ?? 0)];
  if (half && (given < 1 || given > 12)) return undefined;
  const hour = half ? (given % 12) + (half.toLowerCase() === 'pm' ? 12 : 0) : given;
  return hour < 24 && minute < 60 && second < 60 ? (hour * 3600 + minute * 60 + second) / 86_400 : undefined;
}

function monthNamed(name: string): number {
  const start = name.toLowerCase();
  return MONTHS.findIndex(month => month.startsWith(start) || (start === 'sept' && month === 'september')) + 1;
}

function daysOf(groups: Record<string, string | undefined>): (number | undefined)[] {
  const { year, month, day, name, first, second } = groups;
  const on = (months: number, days: number) => dayOf(Number(year), months, days);
  if (name !== undefined) return [on(monthNamed(name), Number(day))];
  if (first === undefined) return [on(Number(month), Number(day))];
  return [...new Set([on(Number(second), Number(first)), on(Number(first), Number(second))])];
}

function readingsOf(text: string): DateReadings {
  const bare = text.replace(/\s+/g, ' ').trim();
  for (const form of [YEAR_FIRST, POINTS, EITHER, DAY_NAMED, NAME_FIRST]) {
    const found = form.exec(bare);
    if (!found) continue;
    const part = partOfDay(found.slice(-4));
    const days = daysOf(found.groups!).filter(day => day !== undefined);
    return (part === undefined ? [] : days.map(day => day + part)) as unknown as DateReadings;
  }
  return [];
}

/** Which of the two comes first in `3/4/2026`, by the mark between them; a mark is missing where nobody knows. */
export type DateOrders = Readonly<Partial<Record<string, 'day' | 'month'>>>;

const NO_ORDERS: DateOrders = {};

/**
 * The order of day and month in a column, by those of its dates that can be read one way only; none where they contradict each other.
 * @example dateOrders(['9/1/2026', '9/13/2026']) // { '/': 'month' }
 */
export function dateOrders(texts: readonly string[]): DateOrders {
  const orders: Record<string, 'day' | 'month' | 'both'> = {};
  for (const text of texts) {
    const bare = text.replace(/\s+/g, ' ').trim();
    const { first, second, mark } = EITHER.exec(bare)?.groups ?? {};
    if (mark === undefined || first === second || readingsOf(bare).length !== 1) continue;
    const order = Number(first) > 12 ? 'day' : Number(second) > 12 ? 'month' : undefined;
    if (order) orders[mark] = orders[mark] === undefined || orders[mark] === order ? order : 'both';
  }
  return Object.fromEntries(Object.entries(orders).filter(([, order]) => order !== 'both')) as DateOrders;
}

/** The order that a column has for the mark of a text. */
const orderFor = (text: string, orders: DateOrders) => orders[/[-/]/.exec(text)?.[0] ?? ''];

/**
 * A date, with its time of day, as the sheet's number: days, the time as a fraction of one.
 * @param cell a number of the sheet, or text like `2026-11-29`, `2026-11-29 14:30`, `29.11.2026`, `2026/11/29`, `29 Nov 2026`
 * @param orders of its column: they settle what could be two dates
 * @returns undefined where it is no date, or could be two (`03/04/2026`; see ambiguousDate)
 */
export function momentNumber(cell: string | number, orders: DateOrders = NO_ORDERS): number | undefined {
  if (typeof cell === 'number') return cell >= 1 && cell < LAST_DAY + 1 ? cell : undefined;
  const readings = readingsOf(cell);
  if (readings.length < 2) return readings[0];
  const order = orderFor(cell, orders);
  return order && readings[order === 'day' ? 0 : 1];
}

/**
 * A date as the sheet's day number; as momentNumber, without the time of day.
 * @example dayNumber('2025-03-14') // 45730
 */
export function dayNumber(cell: string | number, orders?: DateOrders): number | undefined {
  const moment = momentNumber(cell, orders);
  return moment === undefined ? undefined : Math.floor(moment);
}

/** What to say to a date that may be read either way round: `write 2026-04-03 or 2026-03-04`; undefined to any other text. */
export function ambiguousDate(text: string): string | undefined {
  const [one, other] = readingsOf(text);
  return one === undefined || other === undefined ? undefined : `write ${isoDate(one)} or ${isoDate(other)}`;
}

/** A day number as ISO text; a time of day is dropped. */
export function isoDate(day: number): string {
  return new Date((Math.floor(day) - UNIX_EPOCH_DAY) * MS_PER_DAY).toISOString().slice(0, 10);
}

/** A day number with its time of day, to the minute: `2026-11-29 14:30`; a bare day as isoDate. */
export function isoMoment(moment: number): string {
  const minutes = Math.round(moment * 1440);
  const text = new Date(minutes * 60_000 - UNIX_EPOCH_DAY * MS_PER_DAY).toISOString();
  return minutes % 1440 === 0 ? text.slice(0, 10) : text.slice(0, 16).replace('T', ' ');
}

/** True for a whole number that speaks of a date (2000 … 2099) where a short length is due: 3/8 typed into a plain cell. */
export function looksLikeDate(value: number): boolean {
  return Number.isInteger(value) && value >= FIRST_DATE && value <= LAST_DATE;
}

/** Formats are no longer than this. */
const LONGEST_FORMAT = 255;

/** Whether a number format shows dates: a day or year code outside quotes and brackets. */
export function isDateFormat(format: string): boolean {
  return /[dy]/i.test(
    format
      .slice(0, LONGEST_FORMAT)
      .replace(/"[^"]*"|\[[^\]]*\]|\\./g, '')
      .replace(/General|Standard/gi, ''),
  );
}
