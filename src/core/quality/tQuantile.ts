import { bisect } from './bisect';
import { incompleteBeta } from './incompleteBeta';

/** Student's t distribution: probability of a value above t (t ≥ 0). */
export function tUpperTail(t: number, df: number): number {
  const whole = df + t * t;
  return incompleteBeta(df / whole, (t * t) / whole, df / 2, 0.5)[0] / 2;
}

/**
 * Quantile of Student's t distribution: the value that is not exceeded with probability p.
 * @param p 0.5 up to, not including, 1
 * @param df degrees of freedom, above 0
 * Source: NIST/SEMATECH e-Handbook 1.3.6.7.2.
 */
export function tQuantile(p: number, df: number): number {
  let high = 1;
  while (tUpperTail(high, df) > 1 - p) high *= 2;
  return bisect(t => -tUpperTail(t, df), p - 1, 0, high);
}
