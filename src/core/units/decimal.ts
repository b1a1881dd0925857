import { Decimal as Base } from 'decimal.js';

/**
 * Decimal arithmetic of this project: a clone with its own settings, so that no other code on the page can change them.
 * 40 significant digits; results are rounded half up (away from zero on a tie).
 */
export const Decimal = Base.clone({ precision: 40, rounding: Base.ROUND_HALF_UP, defaults: true });
export type Decimal = Base;

/** Digits that a spreadsheet cell holds. A computed cell carries binary noise behind them (0.1 + 0.2), a typed one nothing. */
const CELL_DIGITS = 15;

/** A cell's number as the decimal that was typed: rounded to the 15 significant digits a spreadsheet keeps. */
export function decimalOfCell(value: number): Decimal {
  // Few characters are few digits: nothing to round, and the number itself is read faster than its text.
  return new Decimal(String(value).length <= CELL_DIGITS ? value : value.toPrecision(CELL_DIGITS));
}

/** A number times itself. */
export const squareOf = (value: Decimal): Decimal => value.times(value);
