import { NAMED_BY } from '../../core/catalogue/catalogueDiff';
import { splitHeading } from '../../core/units/headingUnit';
import { headingKey, partKey } from '../../core/catalogue/partName';
import { isNotEmpty, type RawCell, type RawTable } from '../../core/catalogue/rawTable';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import { catalogueTables, type TableName } from '../../core/catalogue/tables/catalogueTables';

/** A new table with the columns that only the workbook has. */
export interface WithOwnColumns {
  readonly raw: RawTable;
  /** Headings of the columns that were carried over. */
  readonly kept: readonly string[];
  /** Filled cells of them whose row comes no more. */
  readonly lost: number;
}

const keyOf = (cell: RawCell | undefined) => (typeof cell === 'string' ? headingKey(splitHeading(cell).name) : '');

/** Gives each row the name by which the table tells its rows apart; "" where a part of it has no column. */
function rowNamer(table: TableName, headings: readonly RawCell[]): (row: readonly RawCell[]) => string {
  const { fields }: TableSchema = catalogueTables[table];
  const columns = NAMED_BY[table].map(field => headings.findIndex(cell => keyOf(cell) === headingKey(fields[field]!.heading)));
  if (columns[0]! < 0) return () => '';
  return row => columns.map(column => (column < 0 ? '' : partKey(String(row[column] ?? '')))).join('\u001f');
}

/** Columns of the workbook's table that the catalogue does not read and the new table does not have. */
function ownColumns(table: TableName, headings: readonly RawCell[], fresh: readonly RawCell[]): readonly number[] {
  const known = new Set(Object.values(catalogueTables[table].fields).map(({ heading }) => headingKey(heading)));
  const coming = new Set(fresh.map(keyOf));
  return headings.flatMap((cell, column) => {
    const key = keyOf(cell);
    return key === '' || known.has(key) || coming.has(key) ? [] : [column];
  });
}

/**
 * Carries over what people keep beside the data, such as a shelf: columns that the catalogue does not read, row by row by name.
 * @param before the workbook's table, heading row first
 */
export function withOwnColumns(table: TableName, fresh: RawTable, before: RawTable): WithOwnColumns {
  const [headings = [], ...oldRows] = before;
  const [freshHeadings = [], ...freshRows] = fresh;
  const columns = ownColumns(table, headings, freshHeadings);
  if (columns.length === 0) return { raw: fresh, kept: [], lost: 0 };
  const [oldName, newName] = [rowNamer(table, headings), rowNamer(table, freshHeadings)];
  const byName = new Map(oldRows.map(row => [oldName(row), row]));
  const found = new Set<string>();
  const width = freshHeadings.length;
  const filledTo = (row: readonly RawCell[]) => [...row, ...Array<null>(Math.max(0, width - row.length)).fill(null)];
  const rows = freshRows.map(row => {
    const name = newName(row);
    const old = name === '' ? undefined : byName.get(name);
    if (old) found.add(name);
    return [...filledTo(row), ...columns.map(column => old?.[column] ?? null)];
  });
  const lost = oldRows
    .filter(row => !found.has(oldName(row)))
    .reduce((count, row) => count + columns.filter(column => isNotEmpty(row[column])).length, 0);
  return {
    raw: [[...filledTo(freshHeadings), ...columns.map(column => headings[column]!)], ...rows],
    kept: columns.map(column => String(headings[column]).trim()),
    lost,
  };
}
