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
  /** ISO date from which it counts. */
  readonly date: string;
  readonly note: string;
}

/** A dial that is recorded or stands in the catalogue. */
export interface StandingDial {
  /** "" where there is none. */
  readonly dial: string;
  /** Whose dial it is. */
  readonly from: DialSource;
  /** ISO date; "" where it has none. */
  readonly date: string;
}
