import { NotNative } from '../notNative';
import type { PartsTable } from './partsTable';

/** Signs that a search takes for others. */
export const WILDCARDS = /[*?~]/;

/** What stands for them in keys: programs do not agree on how to search for the signs themselves. */
const NEUTRAL: readonly (readonly [sign: string, neutral: string])[] = [
  ['*', '⁎'],
  ['?', '⸮'],
  ['~', '∼'],
];

/** A name as a key. */
export const neutralName = (name: string): string => NEUTRAL.reduce((text, [sign, other]) => text.replaceAll(sign, other), name);

/** The same in a formula. */
export const neutralFormula = (text: string): string =>
  NEUTRAL.reduce((found, [sign, other]) => `SUBSTITUTE(${found},"${sign}","${other}")`, text);

/** A name as other programs compare it, blanks folded. */
export const foldedName = (name: string): string => name.normalize('NFC').replace(/\s+/g, ' ').trim().toLowerCase();

const SEPARATORS = ['|', '¦', '¶', '§'] as const;

/** A sign that no name has. */
export function separatorFor(names: readonly string[]): string {
  const found = SEPARATORS.find(sign => names.every(name => !name.includes(sign)));
  if (!found) throw new NotNative('names of parts have all signs that could stand between two of them');
  return found;
}

/** The column `Key` of a table of parts: the name of every row that counts, blank in rows that the catalogue left out. */
export function nameKeys(table: PartsTable, field: string): string {
  return table.helper(
    'Key',
    table.goodRows.map(({ row, values }) => {
      const name = String(values[field]).normalize('NFC');
      const own = WILDCARDS.test(name) ? undefined : table.ownCell(field, row);
      return { row, cell: { value: neutralName(name), format: 'General', ...(own && { formula: `=TRIM(${own})` }) } };
    }),
  );
}
