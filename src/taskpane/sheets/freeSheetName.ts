/** Longest name of a sheet. */
const LONGEST = 31;

/**
 * A sheet name that is not taken: the wanted one, else with the day, else with the day and a number.
 * @param taken names that are in use; compared without case, as spreadsheets do
 * @example freeSheetName('Cut list', ['cut list'], '2026-10-05') // Cut list 2026-10-05
 */
export function freeSheetName(wanted: string, taken: readonly string[], today: string): string {
  const used = new Set(taken.map(name => name.toLowerCase()));
  const isFree = (name: string) => !used.has(name.toLowerCase());
  const withEnd = (end: string) => `${wanted.slice(0, LONGEST - end.length)}${end}`;
  if (isFree(wanted)) return wanted;
  if (isFree(withEnd(` ${today}`))) return withEnd(` ${today}`);
  for (let number = 2; ; number++) {
    const name = withEnd(` ${today} (${number})`);
    if (isFree(name)) return name;
  }
}
