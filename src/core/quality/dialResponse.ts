import { TradeError } from '../tradeError';
import { Decimal } from '../units/decimal';
import { decimalOfCell } from '../units/scaledDecimal';
import { sum } from './sum';
import { squaresAroundMean } from './squaresAroundMean';
import { tQuantile } from './tQuantile';

/** One crimp: the dial it was made at and its mean diameter. */
export interface DialCrimp {
  readonly dial: number;
  readonly mean: number;
}

/** How a dial acts on the diameter. */
export interface DialResponse {
  /** Tightening per digit, in the unit of the diameters: positive where a higher number crimps tighter. */
  readonly perDigit: number;
  /** 95 % limits; undefined where the crimps are too few for them. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** Crimps of combinations that were crimped more than once. */
  readonly crimps: number;
}

/** What each value lies away from their mean: worked as decimals, so that what stands on a straight line leaves no scatter. */
function fromMean(values: readonly number[]): number[] {
  const decimals = values.map(decimalOfCell);
  const mean = decimals.reduce((total, value) => total.plus(value), new Decimal(0)).div(values.length);
  return decimals.map(value => value.minus(mean).toNumber());
}

/**
 * Tightening per digit of the dial: minus the common slope of mean diameter on dial, each combination at a level of its own.
 * @param combinations the crimps of each combination
 * @throws TradeError `impossible` where no combination was crimped at two settings
 * Source: analysis of covariance with parallel lines; NIST/SEMATECH e-Handbook 4.4 for the slope's interval.
 */
export function dialResponse(combinations: readonly (readonly DialCrimp[])[]): DialResponse {
  const used = combinations.filter(crimps => crimps.length > 1);
  const centred = used.flatMap(crimps => {
    const dials = fromMean(crimps.map(crimp => crimp.dial));
    const means = fromMean(crimps.map(crimp => crimp.mean));
    return dials.map((dial, k) => ({ dial, mean: means[k]! }));
  });
  const spread = sum(used.map(crimps => squaresAroundMean(crimps.map(({ dial }) => dial))));
  if (!(spread > 0)) {
    const advice = 'crimp one combination at two settings or more';
    throw new TradeError('impossible', 'dial', 'does not change within any combination', advice);
  }
  const slope = sum(centred.map(({ dial, mean: diameter }) => dial * diameter)) / spread;
  const perDigit = slope === 0 ? 0 : -slope;
  const df = centred.length - used.length - 1;
  if (df < 1) return { perDigit, low: undefined, high: undefined, crimps: centred.length };
  const residual = sum(centred.map(({ dial, mean: diameter }) => (diameter - slope * dial) ** 2)) / df;
  const reach = tQuantile(0.975, df) * Math.sqrt(residual / spread);
  return { perDigit, low: perDigit - reach, high: perDigit + reach, crimps: centred.length };
}
