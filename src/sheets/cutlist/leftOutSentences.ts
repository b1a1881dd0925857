import { leftOutGroups, leftOutWords } from '../table/readReportText';
import type { ReadReport } from '../table/tableRows';
import type { Gathered } from './gatherCuts';

/** Reasons that are named row by row: somebody has to do something about them. */
const EACH: ReadonlySet<string> = new Set(['stop', 'problem']);

/** What a paper leaves out of a sheet, for its head: what must not be made first, row by row with why; the rest in one sentence. */
export function leftOutSentences(report: ReadReport): readonly string[] {
  const groups = leftOutGroups(report);
  const each = groups
    .filter(({ reason }) => EACH.has(reason))
    .flatMap(({ reason, rows }) =>
      rows.map(({ row, sentence }) => {
        const why = sentence ? `: ${sentence}` : '';
        return `${reason === 'stop' ? 'STOP, left out' : 'Left out'}: row ${row} of ${report.sheet}${why}.`;
      }),
    );
  const others = groups
    .filter(({ reason }) => !EACH.has(reason))
    .map(
      group =>
        `${leftOutWords(group)} (${group.rows.length === 1 ? 'row' : 'rows'} ${group.rows.map(({ row }) => row).join(', ')})`,
    );
  return others.length > 0 ? [...each, `Also left out of ${report.sheet}: ${others.join('; ')}.`] : each;
}

/** Pieces that have another length than their line has now: they stay, and somebody has to know; undefined where there are none. */
export function lengthSentence({ otherLength }: Pick<Gathered, 'otherLength'>): string | undefined {
  if (otherLength.length === 0) return undefined;
  const rows = otherLength.map(({ row, sentence }) => `row ${row} (${sentence})`).join('; ');
  return `Pieces on sheet Pieces have another length than their line has now, and stay as they are: ${rows}.`;
}
