import { addNotes } from '../book/notesSheet';
import { bookBytes, sampleBook } from '../book/sampleBook';
import { addRack } from '../rack/rackSheet';
import { addBenchRecord } from './benchRecordSheet';
import { addCorner } from './cornerSheet';
import { inchJobs } from './inchJobs';
import { addJobList } from './jobListSheet';
import { metricJobs } from './metricJobs';

/** samples/job-sheet.xlsx: a week's jobs in millimetres and in inches, the bench record, and a few single questions. */
export async function jobSheet(): Promise<Uint8Array> {
  const book = sampleBook('Job sheet of a beet contractor’s workshop');
  await addJobList(book, 'Jobs (mm)', 'mm', metricJobs, 1);
  await addJobList(book, 'Jobs (in)', 'in', inchJobs, metricJobs.length + 1);
  addRack(book);
  await addBenchRecord(book);
  await addCorner(book);
  addNotes(book, 'Hose jobs and the bench record of one week.');
  return bookBytes(book);
}
