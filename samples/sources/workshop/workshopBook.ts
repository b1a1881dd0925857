import { addNotes } from '../book/notesSheet';
import { bookBytes, sampleBook } from '../book/sampleBook';
import { addCatalogueFront, addCatalogueTables } from '../catalogue/catalogueSheets';
import { putHandle } from '../catalogue/lookedUpJobs';
import { addRack } from '../rack/rackSheet';
import { fillJobs, JOBS } from './jobsSheet';
import { fillPieces, PIECES } from './piecesSheet';
import { fillQuote, QUOTE, QUOTE_COSTS } from './quoteSheet';

/**
 * samples/workshop.xlsx, the workbook to begin with: the week's jobs, the rack, the pieces of six weeks in which something went wrong, a
 * quote, and the catalogue that all of them look up.
 */
export async function workshopBook(): Promise<Uint8Array> {
  const book = sampleBook('A week in a beet contractor’s workshop');
  const jobs = book.addWorksheet(JOBS);
  addRack(book);
  const pieces = book.addWorksheet(PIECES);
  const quote = book.addWorksheet(QUOTE);
  const costs = book.addWorksheet(QUOTE_COSTS);
  addCatalogueFront(book);
  addCatalogueTables(book);
  await putHandle(book);
  await fillJobs(jobs);
  await fillPieces(pieces);
  await fillQuote(quote, costs);
  addNotes(book, 'A week’s jobs, the rack, the pieces of six weeks, a quote and the catalogue.');
  return bookBytes(book);
}
