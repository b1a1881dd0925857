import { addNotes } from '../book/notesSheet';
import { bookBytes, sampleBook } from '../book/sampleBook';
import { addCatalogueFront, addCatalogueTables } from './catalogueSheets';
import { addFinder } from './finderSheet';
import { addRack } from '../rack/rackSheet';
import { addLookedUpJobs, putHandle } from './lookedUpJobs';
import { addWeek } from './weekSheet';

/** samples/catalogue.xlsx: the workshop's catalogue, a sheet a table, the handle, and job lines looked up in it. */
export async function catalogueBook(): Promise<Uint8Array> {
  const book = sampleBook('Catalogue of a beet contractor’s workshop');
  addCatalogueFront(book);
  addCatalogueTables(book);
  await putHandle(book);
  await addLookedUpJobs(book);
  await addFinder(book);
  await addWeek(book);
  addRack(book);
  addNotes(book, 'Hoses, couplings, crimps, machines and rates of the workshop.');
  return bookBytes(book);
}
