import { sheetText } from './sheetText';

/** True for a text that a sheet would turn into a number or a date as it is written: `1E5`, `1.500`, `3/8`, `0012`. */
export function looksLikeNumber(text: string): boolean {
  return /\d/.test(text) && /^[\s\d.,:/+e-]+$/i.test(text);
}

/**
 * A part's name as it may be written into a cell: one that a sheet would read as a number, a date or a formula gets an apostrophe in front.
 * @example nameText('1E5') // '1E5
 */
export function nameText(name: string): string {
  return looksLikeNumber(name) ? `'${name}` : sheetText(name);
}
