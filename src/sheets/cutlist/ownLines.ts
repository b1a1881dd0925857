import { isReady, type JobLine } from '../jobs/jobLine';
import type { Gathered } from './gatherCuts';

/** What a line says, and where: another week's line in its row that says the same word by word is the same line. */
const keyOf = ({ sheet, row, line, label, hose, quantity, cutLength }: JobLine): string =>
  JSON.stringify([sheet, row, line, label, hose, quantity, cutLength?.value, cutLength?.unit.symbol]);

/** The lines that a plan was made of. */
export function plannedLines({ read, report }: Gathered): readonly string[] {
  const taken = new Set(report.taken);
  return read.lines.filter(line => isReady(line) && taken.has(line.row)).map(keyOf);
}

/**
 * Rows left out because pieces of a line that looks the same are there already, without those whose pieces were written here just now: of
 * these it is known whose they are.
 * @param own keys of `plannedLines`
 */
export function othersLookAlike({ lookAlike, read }: Gathered, own: ReadonlySet<string>): Gathered['lookAlike'] {
  const ownRows = new Set(read.lines.filter(line => own.has(keyOf(line))).map(({ row }) => row));
  return lookAlike.filter(({ row }) => !ownRows.has(row));
}
