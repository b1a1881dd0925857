import type { Decimal } from '../units/decimal';
import type { CrimpReadings } from './crimpReadings';
import { requirePlausibleTolerance } from './crimpTolerance';
import { requirePossibleReadings } from './impossibleReading';
import { spreadOf } from './spreadOf';

/** A measured crimp. The sum of deviations stands beside the mean, so that a mean exactly on a limit stays exact for any count. */
export interface CrimpMeasure {
  readonly count: number;
  readonly mean: Decimal;
  /** Mean − target. */
  readonly deviation: Decimal;
  /** Sum of the readings − count × target: count times the deviation, exactly. */
  readonly deviationSum: Decimal;
  /** Largest − smallest reading. */
  readonly spread: Decimal;
}

/**
 * Mean, deviation and spread of a crimp's readings.
 * @throws TradeError `range` where the tolerance cannot belong to the target, or a reading not to its crimp (see impossibleReading)
 * Source: common practice of the trade (mean of four readings across flats).
 */
export function measureCrimp(crimp: CrimpReadings): CrimpMeasure {
  const { readings, target, tolerance } = crimp;
  requirePlausibleTolerance(target, tolerance);
  requirePossibleReadings(crimp);
  const count = readings.length;
  const sum = readings.reduce((total, reading) => total.plus(reading));
  const deviationSum = sum.minus(target.times(count));
  return {
    count,
    mean: sum.div(count),
    deviation: deviationSum.div(count),
    deviationSum,
    spread: spreadOf(readings),
  };
}
