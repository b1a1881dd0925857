import { RANGE_CONSTANTS } from '../tables/rangeConstants';
import { TradeError } from '../tradeError';
import { mean } from './mean';

/** Limits of one control chart, in the unit of the values. */
export interface ChartLimits {
  readonly chart: 'Mean' | 'Range' | 'Individual' | 'Moving range';
  readonly lower: number;
  readonly centre: number;
  readonly upper: number;
}

/** d2 of a moving range as the e-Handbook's individuals chart rounds it: its published limits rest on these digits. */
export const MOVING_RANGE_D2 = 1.128;

/** Largest less smallest. */
export const rangeOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** Distances between neighbours in time. */
export const movingRanges = (values: readonly number[]): number[] =>
  values.slice(1).map((value, index) => Math.abs(value - values[index]!));

/**
 * Control limits (3 sigma) from subgroups: mean and range charts, or individual and moving range charts for single values.
 * @param subgroups one subgroup a row, all of one size from 1 to 10, in the order they were made
 * @throws TradeError `shape` where there are fewer than two subgroups or more than ten values in one
 * Source: ISO 7870-2; NIST/SEMATECH e-Handbook 6.3.2.
 */
export function controlLimits(subgroups: readonly (readonly number[])[]): ChartLimits[] {
  const size = subgroups[0]?.length ?? 0;
  if (subgroups.length < 2) {
    const received = subgroups.length === 0 ? 'are blank' : 'came as one row';
    throw new TradeError('shape', 'subgroups', received, 'limits need two subgroups or more, one a row');
  }
  const single = size === 1;
  const constants = RANGE_CONSTANTS.find(row => row.n === (single ? 2 : size));
  if (!constants) {
    throw new TradeError('shape', 'subgroups', `came as ${size} columns`, 'give 1 to 10 values a row, one subgroup a row');
  }
  const { d2, d3 } = constants;
  const centre = mean(subgroups.map(mean));
  const range = mean(single ? movingRanges(subgroups.map(([value]) => value!)) : subgroups.map(rangeOf));
  const reach = single ? (3 * range) / MOVING_RANGE_D2 : (3 * range) / d2 / Math.sqrt(size);
  return [
    { chart: single ? 'Individual' : 'Mean', lower: centre - reach, centre, upper: centre + reach },
    {
      chart: single ? 'Moving range' : 'Range',
      lower: range * Math.max(0, 1 - (3 * d3) / d2),
      centre: range,
      upper: range * (1 + (3 * d3) / d2),
    },
  ];
}
