import { jobSheet } from './jobSheet/jobSheet';
import { measurementBook, measurementTruth } from './measurementBook/measurementBook';

/** Every sample file by its path below samples/, and what makes it. */
export const samples: Readonly<Record<string, () => Promise<Uint8Array>>> = {
  'job-sheet.xlsx': jobSheet,
  'measurement-book.xlsx': measurementBook,
  'measurement-book.json': measurementTruth,
};
