/** Values only, or formulas that any spreadsheet program calculates. */
export type CopyKind = 'values' | 'formulas';

/** What a copy is to be. */
export interface CopyWishes {
  /** Names of the sheets to copy, in order. */
  readonly sheets: readonly string[];
  readonly kind: CopyKind;
  /** With costs and margins: nothing for a customer. */
  readonly withCosts: boolean;
  /** With the sheets of the catalogue's tables. */
  readonly withParts: boolean;
  /** A file of its own, or new sheets beside the ones that are copied. */
  readonly target: 'file' | 'sheets';
  /** Day on the copy's first sheet: `2026-10-05`. */
  readonly today: string;
}
