import type { RawTable } from '../../core/catalogue/rawTable';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import type { RangeAddress } from '../../workbook/workbook';
import { guessTable, headingRow, mostFields } from '../catalogue/guessTable';
import type { TableOrigin } from './placedProblem';

/** A table that was picked: out of a file, or a range of this workbook. Its first row holds the headings. */
export interface LoadedTable extends TableOrigin {
  readonly id: string;
  /** The range, where it is one of this workbook. */
  readonly at: RangeAddress | undefined;
  /** What its name and its headings say it is; undefined where they say nothing. */
  readonly guess: TableName | undefined;
  /** It is a whole file, so somebody chose it for what it is. */
  readonly isFile: boolean;
  /** Its numbers have decimal commas: a text `1.250` means 1250. */
  readonly decimalComma: boolean;
  /** How many of its headings a table of the catalogue knows. */
  readonly knownHeadings: number;
}

/** A table as it came, from its heading row on. */
export function loadedTable(
  id: string,
  label: string,
  name: string,
  came: {
    readonly raw: RawTable;
    readonly row: number;
    readonly column: number;
    readonly sheet?: string;
    readonly isFile: boolean;
    readonly decimalComma?: boolean;
  },
): LoadedTable {
  const first = headingRow(came.raw);
  const raw = came.raw.slice(first);
  return {
    id,
    label,
    raw,
    firstRow: came.row + first,
    firstColumn: came.column,
    sheet: came.sheet,
    at: undefined,
    isFile: came.isFile,
    decimalComma: came.decimalComma ?? false,
    guess: guessTable(name, raw[0] ?? [], came.isFile),
    knownHeadings: mostFields(raw[0] ?? []),
  };
}

/** Which table each one is taken for, in the order in which they came: the first of a kind gets its name. */
export function firstOfEach(tables: readonly LoadedTable[]): ReadonlyMap<string, TableName> {
  const taken = new Set<TableName>();
  return new Map(
    tables.flatMap(({ id, guess }) => {
      if (!guess || taken.has(guess)) return [];
      taken.add(guess);
      return [[id, guess] as const];
    }),
  );
}
