import { Decimal } from '../../core/units/decimal';

/** Decimals that a price may have: a length of hose costs fractions of the smallest coin. */
const MOST_PLACES = 4;

/**
 * Money as the pane writes it: two decimals, more only where a price has more.
 * @example moneyText(8) // 8.00
 */
export function moneyText(amount: Decimal | number): string {
  const value = new Decimal(amount).toDecimalPlaces(MOST_PLACES);
  return value.toFixed(Math.max(2, value.decimalPlaces()));
}
