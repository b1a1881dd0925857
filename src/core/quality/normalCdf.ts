import { incompleteGamma } from './incompleteGamma';

/**
 * Standard normal distribution: probability of a value up to z, to double precision in both tails.
 * Source: NIST Digital Library of Mathematical Functions 7.11.2, erfc(x) = Q(1/2, x²).
 */
export function normalCdf(z: number): number {
  const [inside, outside] = incompleteGamma(0.5, (z * z) / 2);
  return z < 0 ? outside / 2 : (1 + inside) / 2;
}
