import type { Decimal } from '../units/decimal';
import type { CrimpMeasure } from './crimpMeasure';

/** What a crimp is judged to be. `TIGHT`: mean below the band; `LOOSE`: above it; `UNSURE` and `OVAL`: see CrimpRule. */
export type CrimpVerdict = 'IN SPEC' | 'TIGHT' | 'LOOSE' | 'UNSURE' | 'OVAL';

/** What a crimp is judged by. */
export interface CrimpRule {
  /** Allowed deviation of the mean, either way. */
  readonly tolerance: Decimal;
  /** Expanded uncertainty U (k = 2) of the mean: nearer to a limit than this, on either side of it, the verdict is `UNSURE`. */
  readonly uncertainty?: Decimal | undefined;
  /** Largest spread of the readings: with the mean in spec and more spread, the verdict is `OVAL`. */
  readonly maxSpread?: Decimal | undefined;
}

/**
 * Judges a measured crimp. A mean exactly on a limit is in spec; a mean exactly U away from a limit is sure.
 * Source: common practice of the trade; guard band ISO 14253-1, ILAC-G8 4.2.
 */
export function judgeCrimp(measure: CrimpMeasure, { tolerance, uncertainty, maxSpread }: CrimpRule): CrimpVerdict {
  const off = measure.deviationSum.abs();
  const limit = tolerance.times(measure.count);
  if (uncertainty && off.minus(limit).abs().lt(uncertainty.times(measure.count))) return 'UNSURE';
  if (off.gt(limit)) return measure.deviationSum.isNegative() ? 'TIGHT' : 'LOOSE';
  return maxSpread && measure.spread.gt(maxSpread) ? 'OVAL' : 'IN SPEC';
}
