import { incompleteBeta } from './incompleteBeta';

/**
 * F distribution: probability of a value of F or more.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.5.
 */
export function fUpperTail(F: number, df1: number, df2: number): number {
  if (F === Infinity) return 0;
  const whole = df2 + df1 * F;
  return incompleteBeta((df1 * F) / whole, df2 / whole, df1 / 2, df2 / 2)[1];
}
