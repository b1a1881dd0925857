/** An error value in a cell of a table. */
export interface RawError {
  /** As the sheet shows it: `#REF!`. */
  readonly error: string;
}

/** A cell of a table as it came; null is blank. */
export type RawCell = string | number | boolean | null | RawError;

/** A table as it came: heading row first. */
export type RawTable = readonly (readonly RawCell[])[];

/** True where a cell of a table holds anything at all, be it a blank sign. */
export const isNotEmpty = (cell: RawCell | undefined): boolean => cell !== null && cell !== undefined && cell !== '';
