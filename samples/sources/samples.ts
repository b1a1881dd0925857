import { catalogueBook } from './catalogue/catalogueBook';
import { catalogueTables } from './catalogue/catalogueTables';
import { csv } from './catalogue/csv';
import { jobSheet } from './jobSheet/jobSheet';
import { measurementBook, measurementTruth } from './measurementBook/measurementBook';
import { workshopBook } from './workshop/workshopBook';

const catalogueFiles = Object.fromEntries(
  catalogueTables.map(table => [`catalogue/${table.name.toLowerCase()}.csv`, async () => csv(table)]),
);

/** Every sample file by its path below samples/, and what makes it. */
export const samples: Readonly<Record<string, () => Promise<Uint8Array>>> = {
  'catalogue.xlsx': catalogueBook,
  ...catalogueFiles,
  'job-sheet.xlsx': jobSheet,
  'measurement-book.xlsx': measurementBook,
  'measurement-book.json': measurementTruth,
  'workshop.xlsx': workshopBook,
};
