import type { CellView } from './cellView';
import { worstVerdict, type RowResult } from './rowView';

/** One line about the selected cell, and whether something in it or in its row is wrong. */
export interface CellSummary {
  readonly text: string;
  readonly isWrong: boolean;
}

/** The selected cell in one line: its error with the sentence, or its function and what it gives; then the worst verdict of its row. */
export function cellSummary(
  { address, error, sentence, warning, call, shown }: CellView,
  row: readonly RowResult[],
): CellSummary {
  const verdict = worstVerdict(row);
  if (warning) return { text: `${address}: ${warning}`, isWrong: true };
  if (error) return { text: `${address} ${[error, sentence].filter(Boolean).join(': ')}`, isWrong: true };
  const cell = call ? `${address} HOSE.${call.id}${shown && `: ${shown}`}` : `${address}: no Benchrow function`;
  // The verdict of the cell itself is not said twice.
  const more = verdict && shown !== verdict ? ` · this row: ${verdict}` : '';
  return { text: cell + more, isWrong: verdict !== undefined && verdict !== 'IN SPEC' };
}
