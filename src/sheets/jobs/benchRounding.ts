import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { LengthRange } from './cutLine';
import { lengthText } from '../table/lengthText';

/** A cut length and what it changes. */
export interface BenchCut {
  readonly cutLength: Decimal;
  /** Cut − wanted; the finished length changes by the same. */
  readonly change: Decimal;
  /** True where the nearest step is outside the length limits and the one on the other side is not. */
  readonly isOtherWay: boolean;
}

/**
 * Rounds a cut length to what the bench can cut; a tie is cut longer. Where the finished length would leave its limits, the
 * step on the other side of the wanted length is tried.
 * @param wanted computed cut length
 * @param step smallest step of the bench, same unit
 * @param finished overall length and its limits, where they are known
 * @throws TradeError `range` where no step keeps the finished length within its limits
 * @example benchCut(new Decimal('1099.5'), new Decimal(1), 'mm').cutLength // 1100
 */
export function benchCut(
  wanted: Decimal,
  step: Decimal,
  unit: LengthUnit,
  finished?: { readonly overall: Decimal; readonly limits: LengthRange },
): BenchCut {
  const nearest = wanted.toNearest(step, Decimal.ROUND_HALF_UP);
  const other = nearest.gt(wanted) ? nearest.minus(step) : nearest.plus(step);
  const suits = (cut: Decimal) => {
    if (cut.lte(0)) return false;
    const overall = finished?.overall.plus(cut.minus(wanted));
    return !finished || !overall || (overall.gte(finished.limits.shortest) && overall.lte(finished.limits.longest));
  };
  if (suits(nearest)) return { cutLength: nearest, change: nearest.minus(wanted), isOtherWay: false };
  if (!nearest.eq(wanted) && suits(other)) return { cutLength: other, change: other.minus(wanted), isOtherWay: true };
  throw new TradeError(
    'range',
    'cut length',
    `${lengthText(wanted, unit)} in steps of ${lengthText(step, unit)} ${unit}`,
    'no step keeps the finished length within its limits; take a finer step or check the length',
  );
}
