import type { QuoteField, QuoteLine } from '../jobs/quoteLine';
import { rowsText } from '../table/rowsText';

const WORDS: Readonly<Partial<Record<QuoteField, string>>> = { overall: 'length' };

/** Rows that do not follow the job sheet in all they show, by what is a text in them: one sentence for each. */
export function heldSentences(lines: readonly Pick<QuoteLine, 'row' | 'held'>[]): readonly string[] {
  const rowsOf = new Map<string, number[]>();
  for (const { row, held } of lines) {
    if (held.length === 0) continue;
    const what = held.map(field => WORDS[field] ?? field).join(' and ') + (held.length === 1 ? ' is a text' : ' are texts');
    rowsOf.set(what, [...(rowsOf.get(what) ?? []), row]);
  }
  return [...rowsOf].map(([what, rows]) => {
    const [does, its] = rows.length === 1 ? ['does', 'its'] : ['do', 'their'];
    const named = rowsText(rows, 12);
    return `${named[0]!.toUpperCase()}${named.slice(1)} ${does} not follow the job sheet: ${its} ${what}.`;
  });
}
