import { Decimal as Base } from 'decimal.js';

/**
 * Decimal arithmetic of this project: a clone with its own settings, so that no other code on the page can change them.
 * 40 significant digits; results are rounded half up (away from zero on a tie).
 */
export const Decimal = Base.clone({ precision: 40, rounding: Base.ROUND_HALF_UP, defaults: true });
export type Decimal = Base;

/** A number times itself. */
export const squareOf = (value: Decimal): Decimal => value.times(value);
