import type { GaugeKind } from './gauge';

/** What a piece, or a crimp of a sheet of readings, was measured with, and when. */
export interface GaugeUse {
  /** Gauges and calipers that its row names. */
  readonly gauges: readonly string[];
  /** What the headings say of some of them: `Caliper`, `Pressure gauge`. By `gaugeKey`. */
  readonly gaugeKinds: ReadonlyMap<string, GaugeKind>;
  /** Day number of the sheet, with its time of day; undefined where there is none that can be read. */
  readonly date: number | undefined;
}
