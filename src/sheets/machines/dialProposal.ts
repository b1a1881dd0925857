import type { DialSource } from '../../core/catalogue/crimpSetup';
import type { Decimal } from '../../core/units/decimal';

/** A dial setting to be recorded for a machine and a combination. */
export interface DialProposal {
  readonly machine: string;
  /** "" = the die of the catalogue's crimp row. */
  readonly die: string;
  readonly hose: string;
  readonly fitting: string;
  readonly dial: Decimal;
  /** From when it counts, as an ISO date; a time of day may follow. Today without one is taken as this minute. */
  readonly date: string;
  /** Who set it; "" or left out = not said. */
  readonly by?: string;
  readonly note: string;
}

/** A dial that is recorded or stands in the catalogue. */
export interface StandingDial {
  /** "" where there is none. */
  readonly dial: string;
  /** Whose dial it is. */
  readonly from: DialSource;
  /** ISO date with its time of day where it has one; "" where it has none. */
  readonly date: string;
  /** Who set it, where that was recorded. */
  readonly by?: string;
}
