import { Decimal } from './decimal';

/** Units a length can be given in. */
export type LengthUnit = 'mm' | 'in';

/** Millimetres in an inch, exactly. Source: NIST SP 811, appendix B. */
export const MM_PER_INCH = new Decimal('25.4');

/**
 * A length in another unit, exactly.
 * @example convertLength(new Decimal(1), 'in', 'mm') // 25.4
 */
export function convertLength(length: Decimal, from: LengthUnit, to: LengthUnit): Decimal {
  if (from === to) return length;
  return from === 'in' ? length.times(MM_PER_INCH) : length.div(MM_PER_INCH);
}
