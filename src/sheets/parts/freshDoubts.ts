import type { Catalogue } from '../../core/catalogue/catalogue';
import { catalogueNotes } from '../../core/catalogue/catalogueNotes';
import { problemSentence } from '../../core/catalogue/problem';

/** What is wrong in a catalogue, or looks so, each without its row: rows move. */
function doubts(catalogue: Catalogue): readonly string[] {
  return [
    ...catalogue.problems.map(problem => problemSentence({ ...problem, row: 0 })),
    ...catalogueNotes(catalogue).map(({ sheet, column, text }) => [sheet, column, text].join('\u001f')),
  ];
}

/** How many cells of a new catalogue are left out or look wrong that were not so in the one before. */
export function freshDoubts(before: Catalogue | undefined, after: Catalogue): number {
  const known = new Map<string, number>();
  for (const doubt of before ? doubts(before) : []) known.set(doubt, (known.get(doubt) ?? 0) + 1);
  return doubts(after).filter(doubt => {
    const left = known.get(doubt) ?? 0;
    known.set(doubt, left - 1);
    return left <= 0;
  }).length;
}
