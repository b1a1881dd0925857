import { isoDate } from '../../core/units/sheetDate';
import type { JudgedCrimp } from './judgedCrimp';
import type { ChangeSince } from './machineCause';

/** When a crimp was made: its day, else its row. */
export const dayText = ({ date, row }: JudgedCrimp): string => (date === undefined ? `row ${row}` : isoDate(date));

/** Since when, at the end of a sentence: ` since 2026-02-09 (row 212)`; "" where nothing changed. */
export function sinceText(since: ChangeSince | undefined): string {
  if (!since) return '';
  return ` since ${dayText(since.crimp)}${since.crimp.date === undefined ? '' : ` (row ${since.crimp.row})`}`;
}
