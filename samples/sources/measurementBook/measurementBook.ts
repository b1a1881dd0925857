import { addNotes } from '../book/notesSheet';
import { bookBytes, sampleBook } from '../book/sampleBook';
import { SCATTER, TOLERANCE, weeks } from './weeks';
import { addWeek } from './weekSheet';

/** samples/measurement-book.xlsx: five weeks of caliper readings of one machine, each with another cause planted in it. */
export async function measurementBook(): Promise<Uint8Array> {
  const book = sampleBook('Measurement book of a beet contractor’s workshop');
  for (const week of weeks) await addWeek(book, week);
  addNotes(book, 'Caliper readings of five weeks; what was planted in each stands in measurement-book.json.');
  return bookBytes(book);
}

/** samples/measurement-book.json: what was planted in the readings, by week. */
export async function measurementTruth(): Promise<Uint8Array> {
  const truth = {
    note: 'What was planted in the readings of measurement-book.xlsx. Invented data; lengths in mm.',
    tolerance: TOLERANCE,
    scatter: SCATTER,
    weeks: weeks.map(({ sheet, story, seed, machine, settings, crimps, finding }) => ({
      sheet,
      story,
      seed,
      machine,
      settings,
      crimps,
      finding,
    })),
  };
  return new TextEncoder().encode(`${JSON.stringify(truth, null, 2)}\n`);
}
