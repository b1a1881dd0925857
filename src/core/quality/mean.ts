import { sum } from './sum';

/** Arithmetic mean: a compensated first pass, corrected by the mean of the residuals. */
export function mean(values: readonly number[]): number {
  const rough = sum(values) / values.length;
  return rough + sum(values.map(value => value - rough)) / values.length;
}
