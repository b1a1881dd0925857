/** Longest name of a sheet. */
const LONGEST = 31;

const withEnd = (name: string, end: string) => `${name.slice(0, LONGEST - end.length)}${end}`;

function isFreeAmong(taken: readonly string[]): (name: string) => boolean {
  const used = new Set(taken.map(name => name.toLowerCase()));
  return name => !used.has(name.toLowerCase());
}

/**
 * A name with the day behind it that is not taken.
 * @param taken names that are in use; compared without case, as spreadsheets do
 * @example datedSheetName('Hoses', ['Hoses'], '2026-11-25') // Hoses 2026-11-25
 */
export function datedSheetName(wanted: string, taken: readonly string[], today: string): string {
  const isFree = isFreeAmong(taken);
  const dated = withEnd(wanted, ` ${today}`);
  if (isFree(dated)) return dated;
  for (let number = 2; ; number++) {
    const name = withEnd(wanted, ` ${today} (${number})`);
    if (isFree(name)) return name;
  }
}

/**
 * The name that a dated one was made of, or the beginning of a long one; undefined where no day stands behind it.
 * @example undatedName('Hoses 2026-11-25 (2)') // Hoses
 */
export const undatedName = (name: string): string | undefined => /^(.+) \d{4}-\d\d-\d\d(?: \(\d+\))?$/.exec(name)?.[1];

/** Whether a sheet's name is another's with a day behind it. */
export function isDatedAfter(name: string, wanted: string): boolean {
  const undated = undatedName(name)?.toLowerCase();
  if (undated === undefined) return false;
  return undated === wanted.toLowerCase() || (name.length === LONGEST && wanted.toLowerCase().startsWith(undated));
}

/**
 * A sheet name that is not taken: the wanted one, else with the day, else with the day and a number.
 * @param taken names that are in use; compared without case, as spreadsheets do
 * @example freeSheetName('Cut list', ['cut list'], '2026-10-05') // Cut list 2026-10-05
 */
export function freeSheetName(wanted: string, taken: readonly string[], today: string): string {
  return isFreeAmong(taken)(wanted) ? wanted : datedSheetName(wanted, taken, today);
}
