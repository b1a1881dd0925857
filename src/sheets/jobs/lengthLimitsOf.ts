import { lengthLimits, usualLengthRule } from '../../core/length/lengthLimits';
import { lengthIn, lengthUnitOf, type LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { LengthRange } from './cutLine';
import type { JobLine } from './jobLine';

/**
 * Limits of the finished length: the sheet's own, else those of the rule that is usual in the sheet's unit; undefined where overall length
 * or bore is not known.
 * @param unit of the limits that come out
 * @throws TradeError where the rule has none for this length and bore
 */
export function lengthLimitsOf({ overall, limits, bore }: JobLine, unit: LengthUnit): LengthRange | undefined {
  if (!overall) return undefined;
  if (limits) return { shortest: lengthIn(limits.shortest, unit), longest: lengthIn(limits.longest, unit) };
  if (!bore) return undefined;
  const own = lengthUnitOf(overall.unit);
  const found = lengthLimits(lengthIn(overall, own), lengthIn(bore, own), own, usualLengthRule(own));
  const as = (value: LengthRange['shortest']) => lengthIn({ value, unit: measureUnit('length', own)! }, unit);
  return { shortest: as(found.shortest), longest: as(found.longest) };
}
