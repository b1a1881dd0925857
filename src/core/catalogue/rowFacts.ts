import type { ReadRow } from './readRows';
import type { TableSchema } from './tableSchema';

export const numberIn = (row: ReadRow, key: string) => row.values[key] as number | undefined;
export const textIn = (row: ReadRow, key: string) => row.values[key] as string | undefined;

/** Adds what is wrong with one cell of a row, so that the row is left out. */
export function addProblem(schema: TableSchema, row: ReadRow, key: string, received: string, expected: string): void {
  row.problems.push({ sheet: schema.sheet, row: row.row, column: schema.fields[key]!.heading, received, expected });
}

/** A value as a problem quotes it. */
export const quotedValue = (value: number | string | undefined) => (value === undefined ? 'blank' : String(value));
