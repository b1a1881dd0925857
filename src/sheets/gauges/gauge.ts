import type { Decimal } from '../../core/units/decimal';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { CheckInterval } from './checkInterval';

/** What a gauge measures with. */
export type GaugeKind = 'caliper' | 'pressure gauge' | 'die' | 'other';

/** One row of the sheet Gauges. Numbers are in `unit`. */
export interface Gauge {
  /** As the sheet shows it. */
  readonly row: number;
  readonly name: string;
  readonly kind: GaugeKind;
  /** Day number of the last check; undefined where none is stated. */
  readonly checked: number | undefined;
  /** Time between checks; undefined where none is stated. */
  readonly every: CheckInterval | undefined;
  /** Day number of the next check, where the sheet states it. */
  readonly due?: number | undefined;
  readonly unit: MeasureUnit | undefined;
  /** Expanded uncertainty, k = 2. */
  readonly uncertainty: Decimal | undefined;
  readonly rangeLow: Decimal | undefined;
  readonly rangeHigh: Decimal | undefined;
  readonly resolution: Decimal | undefined;
  readonly note: string;
  readonly problems: readonly string[];
}

const KINDS: readonly (readonly [RegExp, GaugeKind])[] = [
  [/cal+iper|vernier|micrometer/i, 'caliper'],
  [/pressure|manometer|transducer/i, 'pressure gauge'],
  [/\bdies?\b/i, 'die'],
];

/** What a text says a gauge is. */
export const gaugeKindOf = (text: string): GaugeKind => KINDS.find(([words]) => words.test(text))?.[1] ?? 'other';

/** Names of gauges are compared without case and outer blanks. */
export const gaugeKey = (name: string): string => name.replace(/\s+/g, ' ').trim().toLowerCase();

/** The gauge of a name; undefined where the table has none, or has two. */
export function gaugeOf(gauges: readonly Gauge[], name: string): Gauge | undefined {
  const found = gauges.filter(gauge => gaugeKey(gauge.name) === gaugeKey(name));
  return found.length === 1 ? found[0] : undefined;
}
