import { dayNumber, isoDate } from '../../core/units/sheetDate';
import { gaugeKey, gaugeOf, type Gauge } from '../gauges/gauge';
import { dueDay, gaugeRefusals, laterChecks, NOT_IN_GAUGES } from '../gauges/gaugeDue';
import { pressureRangeNote } from '../gauges/pressureRange';
import type { Piece } from '../pieces/piece';
import type { RecordFields } from './inspectionRecord';

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

/** Gauges of pieces of which the workbook knows no check. */
const notesOf = (pieces: readonly Piece[], unknown: (name: string) => string): readonly string[] => {
  const names = new Map(pieces.flatMap(each => each.gauges).map(name => [gaugeKey(name), name]));
  return [...names.values()].filter(name => unknown(name) !== name).map(unknown);
};

/**
 * The gauges that a record names, and whether they might be used on the day of each piece.
 * @param gauges of the sheet Gauges; undefined where there is none: then only the days are known that are typed for the record
 * @param today the day of the record, for what names no day
 */
export function recordGauges(
  gauges: readonly Gauge[] | undefined,
  pieces: readonly Piece[],
  { caliper, caliperChecked, gauge, gaugeChecked }: RecordFields,
  today: string,
): RecordGauges {
  const day = dayNumber(today)!;
  const typed = [caliper, gauge].map(name => name.trim()).filter(Boolean);
  const names = [...new Map([...typed, ...pieces.flatMap(each => each.gauges)].map(name => [gaugeKey(name), name])).values()];
  const dated = new Set(
    [caliperChecked.trim() && gaugeKey(caliper), gaugeChecked.trim() && gaugeKey(gauge)].filter(key => key !== ''),
  );
  const unknown = (name: string) => (dated.has(gaugeKey(name)) ? name : `${name}: ${NOT_IN_GAUGES}`);
  if (!gauges) return { facts: names.map(unknown), refusals: [], notes: notesOf(pieces, unknown) };
  // The row of the check that counted on the day of each use.
  const usesOf = (name: string) => [
    ...(typed.some(each => gaugeKey(each) === gaugeKey(name)) ? [day] : []),
    ...pieces.filter(piece => piece.gauges.some(each => gaugeKey(each) === gaugeKey(name))).map(({ date }) => date ?? day),
  ];
  const rowsOf = (name: string) => [...new Set(usesOf(name).flatMap(on => gaugeOf(gauges, name, on) ?? []))];
  const said = [
    ...gaugeRefusals(gauges, typed, day),
    ...pieces.flatMap(piece => gaugeRefusals(gauges, piece.gauges, piece.date ?? day, day)),
  ];
  const later = pieces.flatMap(piece => laterChecks(gauges, piece.gauges, piece.date ?? day, day));
  const ranges = pieces.flatMap(({ testPressure, gauges: own, date }) =>
    own.flatMap(name => {
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
