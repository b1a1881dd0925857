import type { Measure } from '../../cells/sheetCell';
import { Decimal } from '../../core/units/decimal';
import { convertMeasure } from '../../core/units/measureUnit';
import type { Gauge } from './gauge';

/** A pressure is read between these shares of a gauge's range. Source: common practice. */
const [LOWEST, HIGHEST] = ['0.25', '0.75'] as const;

/**
 * Says where a pressure gauge would read a test pressure outside the middle half of its range; undefined where it reads it well, or where
 * the gauge's range or unit is not known.
 */
export function pressureRangeNote({ name, kind, unit, rangeLow, rangeHigh }: Gauge, pressure: Measure): string | undefined {
  if (kind !== 'pressure gauge' || unit?.quantity !== 'pressure' || !rangeHigh) return undefined;
  const low = rangeLow ?? new Decimal(0);
  const asked = convertMeasure(pressure.value, pressure.unit, unit);
  const share = asked.minus(low).div(rangeHigh.minus(low));
  if (share.gte(LOWEST) && share.lte(HIGHEST)) return undefined;
  const [from, to] = [LOWEST, HIGHEST].map(part => low.plus(rangeHigh.minus(low).times(part)).toDecimalPlaces(1));
  const range = `${from} … ${to} ${unit.symbol}`;
  const what = share.gt(1)
    ? 'does not reach'
    : share.lt(LOWEST)
      ? 'reads at the bottom of its range'
      : 'reads at the top of its range';
  return `${name} ${what} ${asked.toDecimalPlaces(1)} ${unit.symbol}: it reads best at ${range} (25 … 75 % of its range, common practice).`;
}
