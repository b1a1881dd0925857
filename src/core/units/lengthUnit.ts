import { Decimal } from './decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from './measureUnit';

/** Units a length can be given in to the trade's arithmetic. */
export type LengthUnit = 'mm' | 'in';

/** Millimetres in an inch, exactly. Source: NIST SP 811, appendix B. */
export const MM_PER_INCH = new Decimal('25.4');

/** A length as a sheet gives it: its value and its unit, which stay together until the arithmetic is called. */
export interface Length {
  readonly value: Decimal;
  readonly unit: MeasureUnit;
}

/** Units that are counted in inches by the arithmetic. */
const OF_INCHES: ReadonlySet<string> = new Set(['in', 'ft', 'yd', 'thou']);

/**
 * A length in another unit, exactly.
 * @example convertLength(new Decimal(1), 'in', 'mm') // 25.4
 */
export function convertLength(length: Decimal, from: LengthUnit, to: LengthUnit): Decimal {
  if (from === to) return length;
  return from === 'in' ? length.times(MM_PER_INCH) : length.div(MM_PER_INCH);
}

/** The unit of the arithmetic that a unit of length belongs to: `in` for inches, feet, yards and thousandths, else `mm`. */
export function lengthUnitOf(unit: MeasureUnit): LengthUnit {
  return OF_INCHES.has(unit.symbol) ? 'in' : 'mm';
}

/**
 * A sheet's length in a unit of the arithmetic, exactly.
 * @example lengthIn({ value: new Decimal('1.25'), unit: metre }, 'mm') // 1250
 */
export function lengthIn({ value, unit }: Length, to: LengthUnit): Decimal {
  return convertMeasure(value, unit, measureUnit('length', to)!);
}
