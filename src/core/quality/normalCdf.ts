import cdf from '@stdlib/stats-base-dists-normal-cdf';

/** Standard normal distribution: probability of a value up to z, to double precision in both tails. */
export function normalCdf(z: number): number {
  return cdf(z, 0, 1);
}
