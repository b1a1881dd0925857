import type { Note } from '../../../src/core/catalogue/note';

/** A note with its place: `Hoses row 7: Bend radius is 20, …`. */
export function noteSentence({ sheet, row, text }: Note): string {
  return row > 0 ? `${sheet} row ${row}: ${text}` : `${sheet}: ${text}`;
}
