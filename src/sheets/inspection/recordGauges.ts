import { dayNumber, isoDate } from '../../core/units/sheetDate';
import { gaugeKey, gaugeOf, type Gauge } from '../gauges/gauge';
import { dueDay, gaugeRefusals, laterChecks, NOT_IN_GAUGES } from '../gauges/gaugeDue';
import { pressureRangeNote } from '../gauges/pressureRange';
import type { GaugeUse } from '../gauges/gaugeUse';
import type { RecordFields, RecordUse } from './inspectionRecord';
import type { Instrument } from './instrument';
import { instrumentsOf, isTested, lacks, withoutNamed } from './instruments';

/** What a record says of its gauges. */
export interface RecordGauges {
  /** Each with its resolution, U and due date, or that nobody knows of a check. */
  readonly facts: readonly string[];
  /** Why the record must not be made: a gauge was overdue on the day it was used. */
  readonly refusals: readonly string[];
  /** Worth a look: not on sheet Gauges, or read at the edge of its range. */
  readonly notes: readonly string[];
}

function factOf(gauge: Gauge): string {
  const { name, resolution, uncertainty, unit, checked } = gauge;
  const due = dueDay(gauge);
  const symbol = unit ? ` ${unit.symbol}` : '';
  const parts = [
    resolution && `resolution ${resolution}${symbol}`,
    uncertainty && `U ${uncertainty}${symbol} (k = 2)`,
    checked !== undefined && `checked ${isoDate(checked)}`,
    due !== undefined && `due ${isoDate(due)}`,
  ].filter(Boolean);
  return parts.length > 0 ? `${name}: ${parts.join(', ')}` : name;
}

const isUnknown = (sentence: string) => /: (?:not|twice) on sheet Gauges/.test(sentence);

/** Gauges of rows of which the workbook knows no check. */
const notesOf = (uses: readonly GaugeUse[], unknown: (name: string) => string): readonly string[] => {
  const names = new Map(uses.flatMap(each => each.gauges).map(name => [gaugeKey(name), name]));
  return [...names.values()].filter(name => unknown(name) !== name).map(unknown);
};

/** A name and the day on which it was used. */
interface DatedUse {
  readonly name: string;
  readonly on: number;
}

/** Uses of what is typed for all records: the caliper on the days of the rows that name none, the pressure gauge on the day of the record. */
function typedUses(
  uses: readonly RecordUse[],
  instruments: readonly Instrument[],
  { caliper, gauge }: RecordFields,
  day: number,
): readonly DatedUse[] {
  const days = uses.length === 0 ? [day] : withoutNamed(uses, 'caliper', instruments).map(({ date }) => date ?? day);
  const isTyped = lacks('pressure gauge', uses.filter(isTested), instruments);
  return [...days.map(on => ({ name: caliper.trim(), on })), ...(isTyped ? [{ name: gauge.trim(), on: day }] : [])].filter(
    ({ name }) => name !== '',
  );
}

/**
 * The gauges that a record names, and whether they might be used on the day of each piece or crimp.
 * @param gauges of the sheet Gauges; undefined where there is none: then only the days are known that are typed for the record
 * @param today the day of the record, for what names no day
 */
export function recordGauges(
  gauges: readonly Gauge[] | undefined,
  uses: readonly RecordUse[],
  fields: RecordFields,
  today: string,
): RecordGauges {
  const { caliper, caliperChecked, gauge, gaugeChecked } = fields;
  const day = dayNumber(today)!;
  const own = uses.flatMap(use => use.gauges.map((name): DatedUse => ({ name, on: use.date ?? day })));
  const all = [...typedUses(uses, instrumentsOf(gauges, uses), fields, day), ...own];
  const names = [...new Map(all.map(({ name }) => [gaugeKey(name), name])).values()];
  const dated = new Set(
    [caliperChecked.trim() && gaugeKey(caliper), gaugeChecked.trim() && gaugeKey(gauge)].filter(key => key !== ''),
  );
  const unknown = (name: string) => (dated.has(gaugeKey(name)) ? name : `${name}: ${NOT_IN_GAUGES}`);
  if (!gauges) return { facts: names.map(unknown), refusals: [], notes: notesOf(uses, unknown) };
  // The row of the check that counted on the day of each use.
  const usesOf = (name: string) => all.filter(each => gaugeKey(each.name) === gaugeKey(name)).map(({ on }) => on);
  const rowsOf = (name: string) => [...new Set(usesOf(name).flatMap(on => gaugeOf(gauges, name, on) ?? []))];
  const said = all.flatMap(({ name, on }) => gaugeRefusals(gauges, [name], on, day));
  const later = all.flatMap(({ name, on }) => laterChecks(gauges, [name], on, day));
  const ranges = uses.flatMap(({ testPressure, gauges: named, date }) =>
    named.flatMap(name => {
      const used = testPressure && gaugeOf(gauges, name, date ?? day);
      return used ? (pressureRangeNote(used, testPressure) ?? []) : [];
    }),
  );
  return {
    facts: names.flatMap(name => {
      const rows = rowsOf(name);
      return rows.length > 0 ? rows.map(factOf) : [unknown(name)];
    }),
    refusals: [...new Set(said.filter(sentence => !isUnknown(sentence)))],
    notes: [...new Set([...said.filter(isUnknown), ...later, ...ranges])],
  };
}
