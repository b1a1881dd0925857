import type { Gauge } from '../gauges/gauge';

/** A caliper or pressure gauge that pieces name. */
export interface Instrument {
  readonly name: string;
  /** What it is by the sheet Gauges, else by its own name; "other" where neither says. */
  readonly kind: Gauge['kind'];
  /** Day of its last check; "" where nobody says. */
  readonly checked: string;
}
