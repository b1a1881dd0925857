import { Decimal } from '../../core/units/decimal';
import { RATING_PLACES } from '../../core/units/decimalPlaces';

/** What somebody has stated has no more decimals; what has more was worked out or converted. */
const STATED_PLACES = 2;
/** Digits that are left of a low pressure: 10 psi are 0.68 bar, not 0. */
const LEAST_DIGITS = 2;

/** True for a working pressure as somebody states one. */
export const isStated = (pressure: Decimal): boolean => pressure.decimalPlaces() <= STATED_PLACES;

/** How many decimals of a working pressure are read: its own where it was stated, else those that are usual with its unit. */
export function ratingPlaces(pressure: Decimal, symbol: string): number {
  if (isStated(pressure)) return pressure.decimalPlaces();
  return Math.max(RATING_PLACES[symbol] ?? 0, LEAST_DIGITS - 1 - pressure.e);
}

/** A working pressure as it is read: never above what it is. 4500 psi are 310.26… bar: 310 bar. */
export const ratedDown = (pressure: Decimal, symbol: string, places: number = ratingPlaces(pressure, symbol)): Decimal =>
  pressure.toDecimalPlaces(places, Decimal.ROUND_DOWN);
