const POINT = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const COMMA = /^[+-]?(?:\d+,\d+|,\d+)$/;
/** Digits in threes: `2.000` and `1,250` may be thousands or decimals, `1.250,5` and `1,250.5` tell which. */
const THREES = { ',': /^[+-]?[1-9]\d{0,2}(?:,\d{3})+$/, '.': /^[+-]?[1-9]\d{0,2}(?:\.\d{3})+$/ } as const;
const BOTH = { ',': /^[+-]?[1-9]\d{0,2}(?:\.\d{3})+,\d+$/, '.': /^[+-]?[1-9]\d{0,2}(?:,\d{3})+\.\d+$/ } as const;
const WITH_POINT = /^[+-]?\d*\.\d+$/;
/** Part names such as 007 stay text. */
const LEADING_ZERO = /^[+-]?0\d/;

/** What parts whole and decimals in the numbers of a file. */
export type DecimalMark = '.' | ',';

/**
 * The decimal mark of a file, by those numbers that can be read in one way only; a point wins. Where all numbers with commas have their
 * digits in threes (`1,250`), the comma is taken for decimal only in a file whose cells are parted by semicolons, as those are that write it so.
 */
export function decimalMark(rows: readonly (readonly string[])[], delimiter: string): DecimalMark {
  let comma = false;
  let point = false;
  let threes = false;
  for (let row = 1; row < rows.length; row++) {
    for (const cell of rows[row]!) {
      const text = cell.trim();
      if (BOTH['.'].test(text) || (WITH_POINT.test(text) && !THREES['.'].test(text))) return '.';
      if (isSureComma(text)) comma = true;
      else if (THREES[','].test(text)) threes = true;
      else if (THREES['.'].test(text)) point = true;
    }
  }
  return comma || (threes && !point && delimiter === ';') ? ',' : '.';
}

/** Digits that a number keeps. */
const KEPT_DIGITS = 15;

/** True where a number says all that its text does: no digit is lost, and it is none that no cell can hold. */
function isWhole(text: string, value: number): boolean {
  return Number.isFinite(value) && text.replace(/e.*$/i, '').replace(/\D/g, '').replace(/^0+/, '').length <= KEPT_DIGITS;
}

/** A cell's number; undefined where it is none, one that can be read in two ways, or one that a number cannot hold. */
export function markedNumber(text: string, mark: DecimalMark): number | undefined {
  const value = numberOf(text, mark);
  return value !== undefined && isWhole(text, value) ? value : undefined;
}

/** True for a number with decimals that can be read in one way only: `12,5`, `1.250,5`. */
export const isSureComma = (text: string): boolean => BOTH[','].test(text) || (COMMA.test(text) && !THREES[','].test(text));

/** True for digits in threes in a file of decimal commas: `1.250` and `1,250` may be a number, either way, or a name. */
export const isUnsure = (text: string, mark: DecimalMark): boolean =>
  mark === ',' && (THREES['.'].test(text) || THREES[','].test(text));

/** True for `1E5`, `+4` and `1.500`: as a number they would be written otherwise, so that they may be names. */
export function mayBeName(text: string, mark: DecimalMark): boolean {
  return /e/i.test(text) || text.startsWith('+') || (mark === '.' && /\.\d*0$/.test(text));
}

function numberOf(text: string, mark: DecimalMark): number | undefined {
  if (mark === ',') {
    if (THREES['.'].test(text) || BOTH[','].test(text)) return Number(text.replace(/\./g, '').replace(',', '.'));
    if (COMMA.test(text)) return Number(text.replace(',', '.'));
  } else if (BOTH['.'].test(text)) return Number(text.replace(/,/g, ''));
  return POINT.test(text) && !LEADING_ZERO.test(text) ? Number(text) : undefined;
}
