import { numberFromText } from '../units/numberText';

/**
 * A text as it may be written into a cell: one that starts with `=`, `+`, `-` or `@` and is not a number gets an apostrophe in front, so
 * that no host takes it for a formula.
 * @example sheetText('=HYPERLINK("…")') // '=HYPERLINK("…")
 */
export function sheetText(text: string): string {
  return /^\s*[=+\-@\t\r]/.test(text) && !numberFromText(text) ? `'${text}` : text;
}
