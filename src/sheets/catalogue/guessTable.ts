import { splitHeading } from '../../core/units/headingUnit';
import { headingKey } from '../../core/catalogue/partName';
import { proposedHeadings } from '../../core/catalogue/proposedHeading';
import { isNotEmpty, type RawCell, type RawTable } from '../../core/catalogue/rawTable';
import type { TableSchema } from '../../core/catalogue/tableSchema';
import { catalogueTables, TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';

const LOOK_IN = 30;

function foundFields(schema: TableSchema, cells: readonly RawCell[]): ReadonlySet<string> {
  const known = new Map(Object.entries(schema.fields).map(([key, field]) => [headingKey(field.heading), key]));
  return new Set(cells.flatMap(cell => (typeof cell === 'string' ? (known.get(headingKey(splitHeading(cell).name)) ?? []) : [])));
}

/** How many headings a table of the catalogue knows, of the table that knows most. */
export const mostFields = (cells: readonly RawCell[]) =>
  Math.max(...TABLE_NAMES.map(name => foundFields(catalogueTables[name], cells).size));

const filledIn = (cells: readonly RawCell[]) => cells.filter(isNotEmpty).length;

/** Zero-based first row that is filled at least half as far as the fullest one: a title above it is not. */
function firstFullRow(rows: RawTable): number {
  const fullest = Math.max(0, ...rows.map(filledIn));
  return Math.max(
    0,
    rows.findIndex(cells => filledIn(cells) > 0 && filledIn(cells) * 2 >= fullest),
  );
}

/** Zero-based row of the headings: that with most known ones near the top, else the first that is as full as a row of headings. */
export function headingRow(table: RawTable): number {
  let [best, most] = [-1, 1];
  table.slice(0, LOOK_IN).forEach((cells, row) => {
    const count = mostFields(cells);
    if (count > most) [best, most] = [row, count];
  });
  return best >= 0 ? best : firstFullRow(table.slice(0, LOOK_IN));
}

function byHeadings(cells: readonly RawCell[], fieldsOf = foundFields): TableName | undefined {
  const fits = TABLE_NAMES.flatMap(name => {
    const schema: TableSchema = catalogueTables[name];
    const found = fieldsOf(schema, cells);
    const isWhole = Object.entries(schema.fields).every(([key, field]) => !field.required || found.has(key));
    return isWhole ? [{ name, count: found.size }] : [];
  });
  return fits.sort((a, b) => b.count - a.count)[0]?.name;
}

/** Fewer proposed headings than this may be those of any table. */
const LEAST_PROPOSED = 4;

const nameOf = (schema: TableSchema) => TABLE_NAMES.find(name => catalogueTables[name].sheet === schema.sheet)!;

/** The fields that headings mean, by our own words or by what the words of the trade propose. */
export function fieldsByWords(schema: TableSchema, headings: readonly RawCell[]): ReadonlySet<string> {
  const proposed = [...proposedHeadings(nameOf(schema), headings).values()];
  return new Set([...foundFields(schema, headings), ...foundFields(schema, proposed)]);
}

/** As byHeadings, by what the words of the trade propose. */
function byProposals(cells: readonly RawCell[]): TableName | undefined {
  return byHeadings(cells, (schema, headings) => {
    const found = fieldsByWords(schema, headings);
    return found.size < LEAST_PROPOSED ? new Set() : found;
  });
}

/** What else people call a table. */
const OTHER_NAMES: Partial<Record<TableName, string>> = { fittings: 'couplings' };

/** `Hoses`, `my hoses 2026.csv`, `hose-list` → hoses; `couplings.csv` → fittings. */
function byName(name: string): TableName | undefined {
  const words = name.toLowerCase().split(/[^\p{L}]+/u);
  return TABLE_NAMES.find(table => {
    const names = [catalogueTables[table].sheet.toLowerCase(), OTHER_NAMES[table] ?? ''].filter(Boolean);
    return names.some(each => words.includes(each) || words.includes(each.replace(/s$/, '')));
  });
}

/** The table whose own name a sheet has. */
export const tableOfSheet = (name: string): TableName | undefined =>
  TABLE_NAMES.find(table => catalogueTables[table].sheet.toLowerCase() === name.trim().toLowerCase());

/**
 * What a table is, by the name of its sheet, else by its headings; of a file by its headings or its name, whichever fits more of them.
 * @param isFile the name is a file's: any word of it counts
 */
export function guessTable(name: string, headings: readonly RawCell[], isFile: boolean): TableName | undefined {
  const sheet = tableOfSheet(name);
  if (sheet || !isFile) return sheet ?? byHeadings(headings);
  const [named, fits] = [byName(name), byHeadings(headings) ?? byProposals(headings)];
  const fieldsOf = (table: TableName) => foundFields(catalogueTables[table], headings).size;
  // Of Dies a single heading is required, so that other tables with a column of dies would be taken for it.
  return named && fits && fieldsOf(named) > fieldsOf(fits) ? named : (fits ?? named);
}
