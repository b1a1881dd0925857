import { splitHeading } from '../../core/units/headingUnit';
import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';
import { headingKey } from '../../core/catalogue/partName';
import { looksLikeNumber } from '../../core/catalogue/nameText';
import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import { sheetText } from '../../core/catalogue/sheetText';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import type { WrittenCell } from '../print/sheetWriter';
import { FIRST_DATE, LAST_DATE } from '../../core/units/sheetDate';

/** A table as it is written: heading row first, all rows of one width. */
export interface TableGrid {
  readonly cells: readonly (readonly WrittenCell[])[];
  /** Zero-based columns that stand at a place where another one stood, or none. */
  readonly moved: readonly number[];
  /** Zero-based columns that hold dates. */
  readonly dates: readonly number[];
  /** Zero-based columns with a text that a host could take for a formula, or a name that it could take for a number. */
  readonly guarded: readonly number[];
  /** Rates that are fractions, which are shown in per cent; other cells of that column are not. */
  readonly shares: readonly { readonly row: number; readonly column: number; readonly isShare: boolean }[];
  /** Headings that were there before and are no longer in the file. */
  readonly dropped: readonly string[];
}

const written = (cell: RawCell | undefined): WrittenCell =>
  cell === null || cell === undefined ? '' : typeof cell === 'object' ? cell.error : cell;

const keyOf = (cell: RawCell | undefined): string =>
  typeof cell === 'string' ? headingKey(splitHeading(cell).name) : String(written(cell));

/** Where each new column goes: where its heading stood, else into a column whose heading comes no more, else behind the last. */
function places(headings: readonly RawCell[], before: readonly RawCell[]): readonly number[] {
  const taken = new Set<number>();
  const kept = headings.map(heading => {
    const key = keyOf(heading);
    const index = key === '' ? -1 : before.findIndex((old, at) => !taken.has(at) && keyOf(old) === key);
    if (index >= 0) taken.add(index);
    return index;
  });
  let next = 0;
  return kept.map(index => {
    if (index >= 0) return index;
    while (taken.has(next)) next++;
    taken.add(next);
    return next;
  });
}

const FRACTION = /\bfraction\b/i;

/** A date arrives as a day number; in a column of texts, whole numbers of this size are dates too. */
function holdsDates(schema: TableSchema, heading: string, column: readonly WrittenCell[]): boolean {
  const field = Object.values(schema.fields).find(each => headingKey(each.heading) === heading);
  if (field?.kind !== 'date' && field?.heading !== 'Checked') return false;
  const numbers = column.filter(cell => typeof cell === 'number');
  return numbers.length > 0 && numbers.every(day => day >= FIRST_DATE && day <= LAST_DATE);
}

/** Names and other texts; a column of somebody's own holds what was typed. */
function holdsTexts(schema: TableSchema, heading: string): boolean {
  const kind = Object.values(schema.fields).find(each => headingKey(each.heading) === heading)?.kind;
  return kind === undefined || kind === 'name' || kind === 'text';
}

/** Numbers of the table Rates, and which of them are fractions: `scrap fraction` by its name. */
function sharesOf(
  schema: TableSchema,
  cells: TableGrid['cells'],
  at: (heading: string) => number | undefined,
): TableGrid['shares'] {
  if (schema !== catalogueTables.rates) return [];
  const { rate, value } = catalogueTables.rates.fields;
  const [names, column] = [at(headingKey(rate.heading)), at(headingKey(value.heading))];
  if (names === undefined || column === undefined) return [];
  return cells.flatMap((line, row) => {
    const number = line[column];
    if (row === 0 || typeof number !== 'number') return [];
    return [{ row, column, isShare: FRACTION.test(String(line[names])) && number <= 1 }];
  });
}

/**
 * A table as it is written over another: columns stay where their headings stand, so that formulas that name them still do.
 * @param before headings that stand there; [] where the place is free
 */
export function tableGrid(schema: TableSchema, table: RawTable, before: readonly RawCell[]): TableGrid {
  const headings = table[0] ?? [];
  const filled = headings.map((_, index) => index).filter(index => table.some(cells => written(cells[index]) !== ''));
  const at = places(
    filled.map(index => headings[index]!),
    before,
  );
  const width = Math.max(0, ...at) + 1;
  const rows = table.filter((row, index) => index === 0 || row.some(cell => written(cell) !== ''));
  const cells = rows.map(row => {
    const line = Array<WrittenCell>(width).fill('');
    filled.forEach((from, index) => (line[at[index]!] = written(row[from])));
    return line;
  });
  const newKeys = new Set(filled.map(index => keyOf(headings[index])));
  const columns = at.map((column, index) => ({ column, key: keyOf(headings[filled[index]!]) }));
  return {
    cells,
    moved: columns.filter(({ column, key }) => keyOf(before[column]) !== key).map(({ column }) => column),
    dates: columns
      .filter(({ column, key }) =>
        holdsDates(
          schema,
          key,
          cells.slice(1).map(line => line[column]!),
        ),
      )
      .map(({ column }) => column),
    guarded: columns
      .filter(({ column, key }) => {
        const isText = holdsTexts(schema, key);
        return cells.slice(1).some(line => {
          const cell = line[column];
          return typeof cell === 'string' && (sheetText(cell) !== cell || (isText && looksLikeNumber(cell)));
        });
      })
      .map(({ column }) => column),
    shares: sharesOf(schema, cells, key => columns.find(each => each.key === key)?.column),
    dropped: before.flatMap(old =>
      typeof old === 'string' && old.trim() !== '' && !newKeys.has(keyOf(old)) ? [old.trim()] : [],
    ),
  };
}
