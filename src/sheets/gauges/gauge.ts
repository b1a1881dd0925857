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

const differ = (values: readonly (string | undefined)[]) => new Set(values.filter(value => value !== undefined)).size > 1;

/** Whether rows of one name are checks of one gauge: on different days, and nothing else tells them apart. */
function areChecks(rows: readonly Gauge[]): boolean {
  const days = new Set(rows.map(({ checked }) => checked).filter(day => day !== undefined));
  const facts: readonly ((gauge: Gauge) => string | undefined)[] = [
    ({ kind }) => kind,
    ({ unit }) => unit?.symbol,
    ({ rangeLow }) => rangeLow?.toString(),
    ({ rangeHigh }) => rangeHigh?.toString(),
    ({ resolution }) => resolution?.toString(),
  ];
  return days.size === rows.length && !facts.some(fact => differ(rows.map(fact)));
}

/**
 * The gauge of a name as it was checked last before a day, where it has a row for each check; as it was checked first, where all its checks
 * came later. Undefined where the table has none of that name, or has two that are not one gauge.
 * @param day number of the day; left out: the last check
 */
export function gaugeOf(gauges: readonly Gauge[], name: string, day = Infinity): Gauge | undefined {
  const found = gauges.filter(gauge => gaugeKey(gauge.name) === gaugeKey(name));
  if (found.length < 2) return found[0];
  if (!areChecks(found)) return undefined;
  const inOrder = [...found].sort((a, b) => a.checked! - b.checked!);
  return inOrder.filter(({ checked }) => Math.floor(checked!) <= day).at(-1) ?? inOrder[0];
}
