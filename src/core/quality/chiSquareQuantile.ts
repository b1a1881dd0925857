import { bisect } from './bisect';
import { incompleteGamma } from './incompleteGamma';

/**
 * Quantile of the chi-square distribution: the value that is not exceeded with probability p.
 * @param p between 0 and 1
 * @param df degrees of freedom, above 0
 * Source: NIST/SEMATECH e-Handbook 1.3.6.7.4.
 */
export function chiSquareQuantile(p: number, df: number): number {
  const below = (x: number) => incompleteGamma(df / 2, x / 2)[0];
  let high = Math.max(1, df);
  while (below(high) < p) high *= 2;
  return bisect(below, p, 0, high);
}
