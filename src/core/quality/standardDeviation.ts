import { squaresAroundMean } from './squaresAroundMean';

/** Sample standard deviation (n − 1) of two values or more. */
export function standardDeviation(values: readonly number[]): number {
  return Math.sqrt(squaresAroundMean(values) / (values.length - 1));
}
