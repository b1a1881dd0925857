import type { Decimal } from '../../core/units/decimal';

/** Limits of a finished length. */
export interface LengthRange {
  readonly shortest: Decimal;
  readonly longest: Decimal;
}

/** One line of a job sheet to be cut; lengths in the unit of the cut settings. */
export interface CutLine {
  /** Row of the sheet, as the sheet shows it. */
  readonly row: number;
  /** The line as the sheet calls it; its row number where it has no such column. */
  readonly line: string;
  readonly label: string;
  readonly hose: string;
  readonly quantity: number;
  /** How many the sheet asks for, where these are only some of them. */
  readonly ordered?: number | undefined;
  /** What the sheet says. */
  readonly wanted: Decimal;
  /** What the bench cuts. */
  readonly cutLength: Decimal;
  readonly overall?: Decimal | undefined;
  readonly limits?: LengthRange | undefined;
  /** Something to know about it though it can be cut. */
  readonly note?: string | undefined;
  /** Number of the piece that waits for this cut; else the cut is for a line of the job sheet. */
  readonly waits?: string | undefined;
  /** Only what the line still wants beside its pieces is cut: each cut is a piece more. */
  readonly isMore?: boolean | undefined;
  /** The line is made once more, though its pieces are in work or done. */
  readonly isAgain?: boolean | undefined;
}

/** Names of hoses are compared without case and outer blanks. */
export function hoseKey(hose: string): string {
  return hose.trim().replace(/\s+/g, ' ').toLowerCase();
}
