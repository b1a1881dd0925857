import { mean } from './mean';
import { sum } from './sum';

/**
 * Sum of squared distances of values from their mean: two passes, corrected for the rounding of the mean.
 * Source: Chan, Golub, LeVeque, "Algorithms for computing the sample variance" (1983), corrected two-pass algorithm.
 */
export function squaresAroundMean(values: readonly number[]): number {
  const centre = mean(values);
  const residuals = values.map(value => value - centre);
  return sum(residuals.map(residual => residual * residual)) - sum(residuals) ** 2 / values.length;
}
