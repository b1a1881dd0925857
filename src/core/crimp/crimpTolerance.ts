import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';

const SMALLEST_SHARE = 2000;
const LARGEST_SHARE = 10;

/**
 * Refuses a tolerance that cannot belong to its target: one outside 1/2000 … 1/10 of it was typed in the wrong unit or cell.
 * @param target crimp diameter
 * @param tolerance half the width of the tolerance band, in the unit of `target`
 * @throws TradeError `range`
 */
export function requirePlausibleTolerance(target: Decimal, tolerance: Decimal): void {
  if (tolerance.times(SMALLEST_SHARE).gte(target) && tolerance.times(LARGEST_SHARE).lte(target)) return;
  const advice = `it cannot belong to the target ${target}: it must lie between 1/2000 and 1/10 of it; check units and cells`;
  throw new TradeError('range', 'tolerance', `is ${tolerance}`, advice);
}
