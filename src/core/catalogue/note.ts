/** Something of a catalogue that looks wrong or is missing, though its row stays. */
export interface Note {
  /** Table: `Hoses`. */
  readonly sheet: string;
  /** Row within the range that was given, its heading row being 1 where it comes first; 0 where the table as a whole is meant. */
  readonly row: number;
  /** Heading of the column. */
  readonly column: string;
  /** What is noticed, as a sentence without its place: `Bend radius is 20, under 2 outside diameters (27)`. */
  readonly text: string;
}
