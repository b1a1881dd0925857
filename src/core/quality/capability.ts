import { TradeError } from '../tradeError';
import { chiSquareQuantile } from './chiSquareQuantile';
import { MOVING_RANGE_D2, movingRanges } from './controlLimits';
import { mean } from './mean';
import { squaresAroundMean } from './squaresAroundMean';
import { standardDeviation } from './standardDeviation';
import { sum } from './sum';

const Z_95 = 1.959963984540054;

/** Measured values and the limits they have to keep, all in one unit. */
export interface CapabilityInput {
  /** One subgroup a row, or single values; in the order they were made. */
  readonly subgroups: readonly (readonly number[])[];
  readonly lower?: number | undefined;
  readonly upper?: number | undefined;
  readonly target?: number | undefined;
}

/** One index with its 95 % limits; undefined where it does not exist. */
export interface CapabilityIndex {
  readonly index: 'Cp' | 'Cpk' | 'Cpm' | 'Pp' | 'Ppk';
  readonly value: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

interface Scatter {
  readonly sigma: number;
  /** Degrees of freedom; undefined for a sigma from moving ranges, which has no exact distribution. */
  readonly df: number | undefined;
}

/** Pooled standard deviation inside subgroups; for single values the mean moving range ÷ d2. */
function scatterWithin(subgroups: readonly (readonly number[])[]): Scatter {
  const df = sum(subgroups.map(group => group.length - 1));
  if (df > 0) return { sigma: Math.sqrt(sum(subgroups.map(squaresAroundMean)) / df), df };
  return { sigma: mean(movingRanges(subgroups.flat())) / MOVING_RANGE_D2, df: undefined };
}

const missing = { value: undefined, low: undefined, high: undefined };

/** Cp or Pp: width of the limits ÷ 6 sigma; its limits come from the chi-square distribution of the variance. */
function widthIndex({ sigma, df }: Scatter, { lower, upper }: CapabilityInput) {
  if (lower === undefined || upper === undefined) return missing;
  const value = (upper - lower) / (6 * sigma);
  if (df === undefined) return { ...missing, value };
  const limit = (p: number) => value * Math.sqrt(chiSquareQuantile(p, df) / df);
  return { value, low: limit(0.025), high: limit(0.975) };
}

/** Cpk or Ppk: distance of the mean from the nearer limit ÷ 3 sigma; limits by the normal approximation. */
function nearerIndex({ sigma, df }: Scatter, centre: number, count: number, { lower, upper }: CapabilityInput) {
  const value = Math.min((upper ?? Infinity) - centre, centre - (lower ?? -Infinity)) / (3 * sigma);
  if (df === undefined) return { ...missing, value };
  const reach = Z_95 * Math.sqrt(1 / (9 * count) + value ** 2 / (2 * df));
  return { value, low: value - reach, high: value + reach };
}

function requireLimits({ lower, upper, target }: CapabilityInput): void {
  if (lower === undefined && upper === undefined) {
    throw new TradeError('blank', 'lower and upper limit', 'are both blank', 'give one of them at least');
  }
  if (lower !== undefined && upper !== undefined && lower >= upper) {
    throw new TradeError('range', 'lower limit', `is ${lower}`, `it must lie below the upper limit ${upper}`);
  }
  if (target !== undefined && (target < (lower ?? -Infinity) || target > (upper ?? Infinity))) {
    if (target === 0) throw new TradeError('blank', 'target', 'is blank or zero', 'fill it in');
    throw new TradeError('range', 'target', `is ${target}`, 'it must lie between the limits');
  }
}

/**
 * Capability indices with 95 % limits. Cp and Cpk use the scatter within subgroups (pooled, with its degrees of freedom; for single values
 * moving ranges, without limits); Pp, Ppk and Cpm the standard deviation of all values. With one limit only, just Cpk and Ppk exist.
 * @throws TradeError where limits are missing or crossed, there are too few values, or the values do not differ
 * Source: NIST/SEMATECH e-Handbook 6.1.6.
 */
export function capability(input: CapabilityInput): CapabilityIndex[] {
  requireLimits(input);
  const { subgroups, lower, upper, target } = input;
  const all = subgroups.flat();
  if (all.length < 2) throw new TradeError('shape', 'subgroups', `hold ${all.length} values`, 'give two values or more');
  const within = scatterWithin(subgroups);
  const overall: Scatter = { sigma: standardDeviation(all), df: all.length - 1 };
  if (overall.sigma === 0) {
    throw new TradeError('impossible', 'subgroups', 'show no scatter', 'values that do not differ have no capability index');
  }
  if (within.sigma === 0) {
    const advice = 'read the caliper finer, or give the values as one column';
    throw new TradeError('impossible', 'subgroups', 'show no scatter within any row', advice);
  }
  const centre = mean(all);
  const aroundTarget =
    target === undefined || lower === undefined || upper === undefined
      ? undefined
      : (upper - lower) / (6 * Math.hypot(overall.sigma, centre - target));
  return [
    { index: 'Cp', ...widthIndex(within, input) },
    { index: 'Cpk', ...nearerIndex(within, centre, all.length, input) },
    { index: 'Cpm', ...missing, value: aroundTarget },
    { index: 'Pp', ...widthIndex(overall, input) },
    { index: 'Ppk', ...nearerIndex(overall, centre, all.length, input) },
  ];
}
