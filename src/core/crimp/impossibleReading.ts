import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { CrimpReadings } from './crimpReadings';
import { decimalOfCell } from '../units/scaledDecimal';
import { spreadOf } from './spreadOf';

const LEAST_SHARE = decimalOfCell(0.8);
const MOST_SHARE = decimalOfCell(1.25);
const APART_TOLERANCES = 10;
const APART_SHARE = decimalOfCell(0.02);

/** A reading that cannot be one of its crimp. */
export interface ImpossibleReading {
  /** Zero-based place among the readings. */
  readonly index: number;
  readonly reading: Decimal;
  /** Why, and what to do: part of a sentence. */
  readonly advice: string;
}

function median(values: readonly Decimal[]): Decimal {
  const sorted = [...values].sort((a, b) => a.cmp(b));
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half]! : sorted[half]!.plus(sorted[half - 1]!).div(2);
}

/** Whether a reading can be one of a crimp of that target at all. */
export const isNearTarget = (reading: Decimal, target: Decimal): boolean =>
  reading.gte(target.times(LEAST_SHARE)) && reading.lte(target.times(MOST_SHARE));

/** Of those too far from the median, the farthest; where two are equally far, the one farther from the target. */
function strayReading({ readings, target, tolerance }: CrimpReadings): ImpossibleReading | undefined {
  const [byTolerance, byTarget] = [tolerance.times(APART_TOLERANCES), target.times(APART_SHARE)];
  const far = byTolerance.gt(byTarget) ? byTolerance : byTarget;
  // The median lies among them.
  if (spreadOf(readings).lte(far)) return undefined;
  const middle = median(readings);
  const strays = readings
    .map((reading, index) => ({ index, reading, apart: reading.minus(middle).abs() }))
    .filter(({ apart }) => apart.gt(far))
    .sort((a, b) => b.apart.cmp(a.apart) || b.reading.minus(target).abs().cmp(a.reading.minus(target).abs()));
  if (!strays[0]) return undefined;
  const { index, reading } = strays[0];
  return { index, reading, advice: `it does not belong to this crimp, whose readings lie around ${middle}: measure again` };
}

/**
 * The first reading that cannot be: one outside 0.8 … 1.25 of its target, or one that lies more than 10 tolerances and more than 2 % of the
 * target from the median of its crimp. Values exactly at a limit can be.
 * @returns undefined where all readings can belong to the crimp
 * @example readings 24.9, 24.9, 29.4, 24.9 for 24.9 ± 0.12: reading 3 does not belong to this crimp
 */
export function impossibleReading(crimp: CrimpReadings): ImpossibleReading | undefined {
  const { readings, target } = crimp;
  const [least, most] = [target.times(LEAST_SHARE), target.times(MOST_SHARE)];
  const index = readings.findIndex(reading => !isNearTarget(reading, target));
  if (index < 0) return strayReading(crimp);
  const advice = `it cannot belong to the target ${target}, which allows ${least} … ${most}: decimal point? unit?`;
  return { index, reading: readings[index]!, advice };
}

/**
 * Refuses a crimp with a reading that cannot be.
 * @throws TradeError `range` that names the reading; see impossibleReading
 */
export function requirePossibleReadings(crimp: CrimpReadings): void {
  const found = impossibleReading(crimp);
  if (found) throw new TradeError('range', `reading ${found.index + 1}`, `is ${found.reading}`, found.advice);
}
