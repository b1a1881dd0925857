/** What a cell of a catalogue table holds; undefined is blank. */
export type TableCell = string | number | Date | undefined;

/** A table of the catalogue as it is written to a sheet or a file. */
export interface SampleTable {
  /** The sheet's name: `Hoses`. */
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
}

/** Mark of every row that somebody could crimp from. */
export const NEVER_CRIMP = 'invented: never crimp from these';

/** Rounds to a multiple of a step, without binary noise. */
export function toStep(value: number, step: number): number {
  const places = (String(step).split('.')[1] ?? '').length;
  return Number((Math.round(value / step) * step).toFixed(places));
}
