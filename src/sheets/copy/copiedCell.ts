import type { CellValue } from '../../workbook/workbook';
import type { CopiedCell } from '../../workbook/copiedWorkbook';
import { callsOurs } from '../../workbook/functionCall';

const BLANK = '';
/** Codes that every spreadsheet program knows. */
const KNOWN_ERRORS = new Set(['#N/A', '#VALUE!', '#DIV/0!', '#NUM!', '#NULL!', '#REF!', '#NAME?']);

/** A blank cell of a copy. */
export const blankCell = (format = 'General'): CopiedCell => ({ value: BLANK, format });

/**
 * What a copy holds in place of a value: what our functions refuse is #N/A there, and so is any error that only one program knows.
 * @param formula the cell's own; a cell without one that shows an error is filled by a function of ours
 */
export function valueForCopy(value: CellValue, formula: string): CellValue {
  if (typeof value !== 'object') return value;
  const isTheirs = formula !== '' && !callsOurs(formula) && KNOWN_ERRORS.has(value.error);
  return { error: isTheirs ? value.error : '#N/A' };
}
