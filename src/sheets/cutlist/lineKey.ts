import type { JobLine } from '../jobs/jobLine';

/** What a line says, and where: another week's line in its row that says the same word by word is the same line. */
export const lineKey = ({ sheet, row, line, label, hose, quantity, cutLength }: JobLine): string =>
  JSON.stringify([sheet, row, line, label, hose, quantity, cutLength?.value, cutLength?.unit.symbol]);
