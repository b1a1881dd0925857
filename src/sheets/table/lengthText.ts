import { HOSE_PLACES } from '../../core/units/decimalPlaces';
import type { Decimal } from '../../core/units/decimal';

/** Length as people write it: whole millimetres or hundredths, or inches with a fraction where it is one of 64ths. */
export function lengthText(length: Decimal, unit: string): string {
  if (unit !== 'in') return length.toDecimalPlaces(unit === 'm' ? HOSE_PLACES.m : HOSE_PLACES.mm).toString();
  const sixtyFourths = length.times(64);
  if (!sixtyFourths.isInteger()) return length.toDecimalPlaces(HOSE_PLACES.in).toString();
  if (length.isNegative()) return `-${lengthText(length.negated(), unit)}`;
  const whole = length.floor();
  let [top, bottom] = [sixtyFourths.minus(whole.times(64)).toNumber(), 64];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  if (top === 0) return whole.toString();
  return `${whole.isZero() ? '' : `${whole} `}${top}/${bottom}`;
}
