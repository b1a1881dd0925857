import type { HeadingWords } from './headingWords';
import { HEADING_WORDS, type HeadingWord } from './headingWords';
import { headingForms, plainHeading, statedUnit } from './heading';
import type { FoundTable } from './findTables';
import { correctionKey, type HeadingCorrections } from './headingCorrections';

/**
 * What the columns of one kind of table can be: each role with its words of the vocabulary, in the order in which they are tried.
 * A role listed first takes a column before the others.
 */
export type RoleList<Role extends string> = readonly (readonly [role: Role, ...words: HeadingWord[]])[];

/** Columns of a table by role, zero-based on the sheet. */
export type ColumnsByRole<Role extends string> = Readonly<Partial<Record<Role, number>>>;

/** The headings of a table, each once: a second `Length` is `Length #2`, so that each can be corrected by itself. */
export function headingNames(headings: readonly string[]): readonly string[] {
  const keys = headings.map(correctionKey);
  return headings.map((heading, index) => {
    const before = keys.slice(0, index).filter(key => key === keys[index]).length;
    return before === 0 || heading === '' ? heading : `${heading} #${before + 1}`;
  });
}

/** Words of columns that hold no lengths. */
const NEVER_LENGTHS: ReadonlySet<HeadingWord> = new Set<HeadingWord>(['quantity', 'status', 'stockStatus']);

/** `Assembly` is a length only where its heading says in which unit: else it numbers the assembly. */
const isNumbering = (heading: string) => /^assembly$/.test(plainHeading(heading)) && !statedUnit(heading, 'length').unit;

const matches = (heading: string, pattern: RegExp | undefined) =>
  pattern !== undefined && headingForms(heading).some(form => form !== '' && pattern.test(form));

/** Whether a heading unmistakably says a word of the vocabulary. */
export const saysExactly = (heading: string, word: HeadingWord): boolean => matches(heading, HEADING_WORDS[word].exact);

/**
 * Which column is what, by the words of its heading: corrections by hand first, then exact words, then loose ones for roles that are
 * still without a column.
 */
export function columnsByRole<Role extends string>(
  { headings, block }: Pick<FoundTable, 'headings' | 'block'>,
  roles: RoleList<Role>,
  corrections: HeadingCorrections = new Map(),
): ColumnsByRole<Role> {
  const found: Partial<Record<Role, number>> = {};
  const taken = new Set<number>();
  headingNames(headings).forEach((heading, index) => {
    const said = corrections.get(correctionKey(heading));
    if (said === undefined || heading === '') return;
    taken.add(index);
    if (roles.some(([role]) => role === said)) found[said as Role] ??= block.column + index;
  });
  for (const kind of ['exact', 'loose'] as const) {
    for (const [role, ...words] of roles) {
      if (found[role] !== undefined) continue;
      // `Qty (m)` counts nothing, `Finished (mm)` is no status. A word that a role lists first counts before its others, wherever its column stands.
      const index = words
        .map(word =>
          headings.findIndex(
            (heading, at) =>
              !taken.has(at) &&
              matches(heading, (HEADING_WORDS[word] as HeadingWords)[kind]) &&
              !(word === 'overall' && isNumbering(heading)) &&
              !(NEVER_LENGTHS.has(word) && statedUnit(heading, 'length').unit),
          ),
        )
        .find(at => at >= 0);
      if (index === undefined) continue;
      taken.add(index);
      found[role] = block.column + index;
    }
  }
  return found;
}

/** The columns besides the one of a role whose headings name that role just as well. */
export function rivalColumns(
  { headings, block }: Pick<FoundTable, 'headings' | 'block'>,
  column: number,
  word: HeadingWord,
): readonly number[] {
  const { exact, loose } = HEADING_WORDS[word] as HeadingWords;
  const pattern = [exact, loose].find(each => matches(headings[column - block.column] ?? '', each));
  return headings.flatMap((heading, index) => {
    const at = block.column + index;
    return at !== column && matches(heading, pattern) && !(word === 'overall' && isNumbering(heading)) ? [at] : [];
  });
}
