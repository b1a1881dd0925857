import type { Decimal } from '../units/decimal';

/** Largest − smallest of some readings. */
export function spreadOf(readings: readonly Decimal[]): Decimal {
  const largest = readings.reduce((most, reading) => (reading.gt(most) ? reading : most));
  return largest.minus(readings.reduce((least, reading) => (reading.lt(least) ? reading : least)));
}
