import { partKey } from './partName';

/** A fluid's name as it is compared: without case; blanks and hyphens are alike (water-glycol, water glycol). */
export const fluidKey = (name: string) =>
  partKey(name)
    .replace(/[\s\u002d\u2010-\u2015]+/g, ' ')
    .trim();

/** The names in a cell of Also called, parted by semicolons, as keys. */
export const fluidNames = (cell: string): string[] => cell.split(';').map(fluidKey).filter(Boolean);

/** True where a list names one of the names (as keys), as an item of its own or in brackets behind one. */
export function listsFluid(fluids: string, names: readonly string[]): boolean {
  return names.includes(fluidKey(fluids)) || fluids.split(/[,;|/()\n]/).some(item => names.includes(fluidKey(item)));
}
