import erfc from '@stdlib/math-base-special-erfc';

/**
 * Standard normal distribution: probability of a value up to z, to double precision in both tails.
 * Source: NIST Digital Library of Mathematical Functions 7.17; erfc of stdlib.
 */
export function normalCdf(z: number): number {
  return erfc(-z / Math.SQRT2) / 2;
}
