import { CellValueType, getNumfmtParseValueFilter, isRealNum } from '@univerjs/core';
import { isErrorText } from './cellReading';

const FORMULA_LIKE = /^[=+\-@＝']/;
const TRUTH = /^(?:true|false)$/i;

/** True where the page would make something else of a text that somebody enters again: a formula, a number, a date, an error. */
function isMistakable(text: string): boolean {
  const isValue = getNumfmtParseValueFilter(text.trim()) !== null || isRealNum(text);
  return isValue || FORMULA_LIKE.test(text) || TRUTH.test(text) || isErrorText(text);
}

/**
 * A text as the page keeps it, never a number or a formula. One that could be taken for something else is marked: it stays text when
 * it is edited, and the formula bar shows it with an apostrophe that is not part of it.
 */
export function textCell(text: string): { readonly v: string; readonly t: CellValueType } {
  return { v: text, t: isMistakable(text) ? CellValueType.FORCE_STRING : CellValueType.STRING };
}
