import { normalCdf } from '../quality/normalCdf';
import type { Decimal } from '../units/decimal';
import { requirePlausibleTolerance } from './crimpTolerance';

/** A measured mean, what it should be, and how well it is known; all in one unit. */
export interface ConformityInput {
  readonly mean: Decimal;
  readonly target: Decimal;
  readonly tolerance: Decimal;
  /** Expanded uncertainty U of the mean, k = 2; above 0. */
  readonly uncertainty: Decimal;
}

/** Digits of a probability that are right. */
const DIGITS = 13;

/**
 * Probability that the true diameter lies within target ± tolerance: normal distribution around the mean, standard deviation U/2.
 * @returns probability, 0 … 1
 * @throws TradeError `range` where the tolerance cannot belong to the target
 * Source: JCGM 106:2012, 7.
 * @example mean 9.8, target 9.5, tolerance 0.5, U 0.2: 0.977250
 */
export function conformity({ mean, target, tolerance, uncertainty }: ConformityInput): number {
  requirePlausibleTolerance(target, tolerance);
  const standard = uncertainty.div(2);
  const toUpper = target.plus(tolerance).minus(mean).div(standard).toNumber();
  const toLower = mean.minus(target.minus(tolerance)).div(standard).toNumber();
  // The nearer limit decides; 1 − Φ is taken as Φ of the negative, so that a tiny probability keeps its digits.
  const chance =
    toUpper < 0
      ? normalCdf(toUpper) - normalCdf(-toLower)
      : toLower < 0
        ? normalCdf(toLower) - normalCdf(-toUpper)
        : 1 - normalCdf(-toUpper) - normalCdf(-toLower);
  // The last digits are only noise of the sum: a mean on its limit is as likely in as out, 0.5.
  return Number(chance.toPrecision(DIGITS));
}
