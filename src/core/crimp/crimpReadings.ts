import type { Decimal } from '../units/decimal';

/** A crimp's caliper readings and what they should be, all in one unit. */
export interface CrimpReadings {
  /** Across flats at mid crimp length, between the die ridges, evenly round (four: 45° apart). Two or more. */
  readonly readings: readonly Decimal[];
  /** Specified crimp diameter. */
  readonly target: Decimal;
  /** Allowed deviation of the mean, either way. */
  readonly tolerance: Decimal;
}
