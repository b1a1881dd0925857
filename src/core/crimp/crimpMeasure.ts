import { Decimal } from '../units/decimal';
import { requirePlausibleTolerance } from './crimpTolerance';
import { requirePossibleReadings } from './impossibleReading';

/** A crimp's caliper readings and what they should be, all in one unit. */
export interface CrimpReadings {
  /** Across flats at mid crimp length, between the die ridges, evenly round (four: 45° apart). Two or more. */
  readonly readings: readonly Decimal[];
  /** Specified crimp diameter. */
  readonly target: Decimal;
  /** Allowed deviation of the mean, either way. */
  readonly tolerance: Decimal;
}

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
  const sum = Decimal.sum(...readings);
  const deviationSum = sum.minus(target.times(count));
  return {
    count,
    mean: sum.div(count),
    deviation: deviationSum.div(count),
    deviationSum,
    spread: Decimal.max(...readings).minus(Decimal.min(...readings)),
  };
}
