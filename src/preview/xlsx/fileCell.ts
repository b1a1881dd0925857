/** A value as the file holds it, also of cells that a formula fills; error values as their text. */
export type CachedValue = string | number | boolean;

/** One cell of the file. */
export interface FileCell {
  readonly sheet: string;
  readonly address: string;
  /** As typed, with `=`; missing in cells without formula and in those filled from elsewhere. */
  readonly formula?: string;
  readonly cached: CachedValue;
  /** Address of the cell whose formula fills this one. */
  readonly filledFrom?: string;
}
