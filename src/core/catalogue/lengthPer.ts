import type { Decimal } from '../units/decimal';
import { measureUnit, type MeasureUnit } from '../units/measureUnit';

const ratios = new Map<string, Decimal>();

/** How many of `unit` make what `per` is counted by: mm and kg/m give 1000, in and `per 100 ft` give 1200. */
export function lengthRatio(unit: MeasureUnit, per: MeasureUnit): Decimal {
  const key = `${unit.symbol} ${per.symbol}`;
  let found = ratios.get(key);
  if (!found) {
    const [, hundred, symbol] = /(?:per |\/)(100 )?(\w+)$/.exec(per.symbol)!;
    found = measureUnit('length', symbol!)!
      .factor.div(unit.factor)
      .times(hundred ? 100 : 1);
    ratios.set(key, found);
  }
  return found;
}

/**
 * A length counted in what a price or mass per length is counted by.
 * @param unit unit of the length
 * @param per unit of the price or mass: `per m`, `lb/ft`
 * @example lengthPer(mm, new Decimal(1500), perMetre) // 1.5
 */
export function lengthPer(unit: MeasureUnit, length: Decimal, per: MeasureUnit): Decimal {
  return length.div(lengthRatio(unit, per));
}
