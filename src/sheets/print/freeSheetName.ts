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
 * A sheet name that is not taken: the wanted one, else with the day, else with the day and a number.
 * @param taken names that are in use; compared without case, as spreadsheets do
 * @example freeSheetName('Cut list', ['cut list'], '2026-10-05') // Cut list 2026-10-05
 */
export function freeSheetName(wanted: string, taken: readonly string[], today: string): string {
  return isFreeAmong(taken)(wanted) ? wanted : datedSheetName(wanted, taken, today);
}
