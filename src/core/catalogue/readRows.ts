import { unitOfField, type CatalogueUnits } from './catalogueUnits';
import { cellReader, Misread, quotedCell, type FieldReader, type Value } from './cellReader';
import { isFilled, type Headings } from './headings';
import type { Problem } from './problem';
import type { RawCell, RawTable } from './rawTable';
import type { Field, TableSchema } from './tableSchema';

/** A row as it was read. Those with problems are left out of the catalogue. */
export interface ReadRow {
  /** Row within the range that was given, counted from 1. */
  readonly row: number;
  /** What could be read, by field. */
  readonly values: Record<string, Value | undefined>;
  /** What could not, by field, as it came. */
  readonly unread: Readonly<Record<string, string>> | undefined;
  readonly problems: Problem[];
}

/** Some hosts deliver 0 for blanks. */
const isEmpty = (cell: RawCell | undefined) => cell === 0 || !isFilled(cell);

/** What is expected of a cell that is blank or an error. */
function notThere(field: Field, read: FieldReader): Misread {
  if (field.kind === 'name') return new Misread('a name');
  return field.kind === 'text' ? new Misread('a text') : (read('') as Misread);
}

/** The rows below the headings, in the catalogue's units; rows without any known field are passed over. */
export function readRows(schema: TableSchema, table: RawTable, headings: Headings, units: CatalogueUnits): ReadRow[] {
  const columns = headings.columns.map(column => ({ ...column, read: cellReader(column, unitOfField(units, column.field)) }));
  const none: Record<string, undefined> = {};
  for (const key of Object.keys(schema.fields)) none[key] = undefined;
  const rows: ReadRow[] = [];
  for (let index = headings.row + 1; index < table.length; index++) {
    const cells = table[index]!;
    if (columns.every(column => isEmpty(cells[column.index]))) continue;
    const values: ReadRow['values'] = { ...none };
    const problems: Problem[] = [];
    let unread: Record<string, string> | undefined;
    for (const { key, field, index: place, read } of columns) {
      const cell = cells[place];
      if (!isFilled(cell) && !field.required) continue;
      const value = isFilled(cell) && typeof cell !== 'object' ? read(cell as string) : notThere(field, read);
      if (!(value instanceof Misread)) {
        values[key] = value;
        continue;
      }
      const received = quotedCell(cell);
      problems.push({ sheet: schema.sheet, row: index + 1, column: field.heading, received, expected: value.expected });
      (unread ??= {})[key] = typeof cell === 'string' ? cell.trim() : received;
    }
    rows.push({ row: index + 1, values, unread, problems });
  }
  return rows;
}
