import type { FoundTable } from '../table/findTables';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { KnownParts } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { headingNames } from '../table/tableColumns';
import type { TableQuestion } from '../table/tableQuestion';
import { columnLetters } from '../../workbook/a1';
import { extremePairs, isBareExtreme, pairMeaning, type ExtremePair } from './bareLimits';
import { crimpColumns, type CrimpColumns } from './crimpColumns';
import { withoutLookedUp } from './lookedUpColumns';

/** A pair of `Min` and `Max` that may be taken as limits. */
export interface BareLimits {
  /** `either`: only somebody who knows the sheet can tell. */
  readonly meaning: 'limits' | 'either';
  /** Its columns, as `“Min” and “Max”`. */
  readonly named: string;
  readonly question: TableQuestion;
}

/** The columns of a table of crimps, those of smallest and largest readings set aside. */
export interface LimitColumns {
  readonly found: CrimpColumns;
  /** By end; undefined where no pair is headed so barely. */
  readonly bare: Readonly<Partial<Record<ExtremePair['end'], BareLimits>>>;
  readonly notes: readonly string[];
}

const LIMITS = 'limits';
const READINGS = 'readings';

function questionOf(names: readonly string[], { block }: FoundTable, { smallest, largest }: ExtremePair): TableQuestion {
  const named = [smallest, largest].flatMap(column =>
    column === undefined ? [] : [`${columnLetters(column)}: ${names[column - block.column]!}`],
  );
  return {
    asked: 'meaning',
    heading: names[(smallest ?? largest)! - block.column]!,
    column: named[0]!,
    sentence: `Columns ${named.join(' and ')}: are they the limits of the diameter, or the smallest and largest reading of each crimp?`,
    choices: [
      { value: LIMITS, label: 'Limits' },
      { value: READINGS, label: 'Smallest and largest reading' },
    ],
  };
}

/**
 * Tells limits from the smallest and largest of the readings: a column that is worked out of the readings limits nothing, and then the next
 * one that its heading allows is looked at. What only repeats the catalogue does not count before the sheet's own.
 * @param above what is stated above the table
 */
export function limitColumns(
  cells: SheetCells,
  table: FoundTable,
  said: TableAnswers,
  parts: KnownParts,
  above: ReadonlySet<string> = new Set(),
): LimitColumns {
  const names = headingNames(table.headings);
  const nameOf = (column: number) => names[column - table.block.column]!;
  const notes: string[] = [];
  const find = (corrections: HeadingCorrections) => crimpColumns(cells, table, corrections, parts);
  const setAside = new Map(withoutLookedUp(cells, table, said.role, above, find));
  for (let found = find(setAside); ; found = find(setAside)) {
    const bare: Partial<Record<ExtremePair['end'], BareLimits>> = {};
    let isChanged = false;
    for (const pair of found.readings[0] > 0 ? extremePairs(found) : []) {
      const own = [pair.smallest, pair.largest].filter(column => column !== undefined);
      if (own.some(column => said.role.has(correctionKey(nameOf(column))))) continue;
      const named = own.map(column => `“${nameOf(column)}”`).join(' and ');
      const question = questionOf(names, table, pair);
      const answer = said.meaning.get(correctionKey(question.heading));
      if (answer === LIMITS) continue;
      const meaning = answer === READINGS ? READINGS : pairMeaning(cells, table, found, pair);
      if (meaning === READINGS) {
        for (const column of own) setAside.set(correctionKey(nameOf(column)), 'none');
        notes.push(`${named}: taken as the smallest and largest of each crimp’s readings, not as limits.`);
        isChanged = true;
      } else if (own.some(column => isBareExtreme(table.headings[column - table.block.column]!))) {
        bare[pair.end] = { meaning, named, question };
      }
    }
    if (!isChanged) return { found, bare, notes };
  }
}
