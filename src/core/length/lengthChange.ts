import { Decimal } from '../units/decimal';

/** Shares of its length that a hose may shorten and lengthen by under pressure where its maker says nothing else. */
export const USUAL_LENGTH_CHANGE = { shorten: new Decimal('0.04'), lengthen: new Decimal('0.02') } as const;

/**
 * Shortest and longest length of a hose under pressure.
 * @param length free length, any unit
 * @param shorten share it may shorten by; 4 % is 0.04
 * @param lengthen share it may lengthen by; 2 % is 0.02
 * @returns lengths in the unit of `length`
 * Source of the usual shares: +2 % published, −4 % from memory (SAE J517 practice); the hose's own data come first.
 * @example lengthChange(new Decimal(1000), new Decimal('0.04'), new Decimal('0.02')) // 960 … 1020
 */
export function lengthChange(length: Decimal, shorten: Decimal, lengthen: Decimal): { shortest: Decimal; longest: Decimal } {
  return { shortest: length.times(new Decimal(1).minus(shorten)), longest: length.times(lengthen.plus(1)) };
}
