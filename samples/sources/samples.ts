import { jobSheet } from './jobSheet/jobSheet';

/** Every sample file by its name, and what makes it. */
export const samples: Readonly<Record<string, () => Promise<Uint8Array>>> = {
  'job-sheet.xlsx': jobSheet,
};
