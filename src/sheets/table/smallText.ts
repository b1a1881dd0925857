import { SMALL_PLACES } from '../../core/units/decimalPlaces';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';

/** A diameter, a depth or another small length: as many decimals as it has, but no more than the bench reads. */
export function smallText(length: Decimal, unit: LengthUnit): string {
  return length.toDecimalPlaces(SMALL_PLACES[unit]).toString();
}

/** Both limits of a small length with equal decimals: where they have more than `most`, they are rounded inwards. */
export function limitsText(smallest: Decimal, largest: Decimal, most: number): string {
  const places = Math.min(most, Math.max(smallest.decimalPlaces(), largest.decimalPlaces()));
  return `${smallest.toFixed(places, Decimal.ROUND_CEIL)} … ${largest.toFixed(places, Decimal.ROUND_FLOOR)}`;
}
