/** What is wrong with one cell or row of a catalogue table. */
export interface Problem {
  /** Table: `Hoses`. */
  readonly sheet: string;
  /** Row within the range that was given, its heading row being 1 where it comes first. */
  readonly row: number;
  /** Heading of the column. */
  readonly column: string;
  /** What came, ready to be shown: `"abc"`, `blank`. */
  readonly received: string;
  /** What was expected instead. */
  readonly expected: string;
}

/** A problem as a sentence: `Hoses row 7: Bore is "x", expected a length in mm`. */
export function problemSentence({ sheet, row, column, received, expected }: Problem): string {
  return `${sheet} row ${row}: ${column} is ${received}, expected ${expected}`;
}
