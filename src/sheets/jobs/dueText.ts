import { isoDate } from '../../core/units/sheetDate';

/** A due date as its cell has it: a day number of the sheet as `2026-10-09`, any other words as they stand. */
export function dueText(due: string): string {
  return /^\d{5}(?:\.\d+)?$/.test(due) ? isoDate(Math.floor(Number(due))) : due;
}
