import type { Measure } from '../../cells/sheetCell';
import { convertMeasure } from '../../core/units/measureUnit';
import { isoDate } from '../../core/units/sheetDate';
import { gaugeKey, gaugeKindOf, gaugeOf, type Gauge } from '../gauges/gauge';
import type { Piece } from '../pieces/piece';
import type { InspectionRecord, RecordFields } from './inspectionRecord';
import type { Instrument } from './instrument';

const listed = (texts: readonly string[]) => [...new Set(texts.filter(Boolean))].join(', ');

/** What the names on pieces are: by the sheet Gauges, by the heading of their column, or by their own words; else nobody knows. */
export function instrumentsOf(gauges: readonly Gauge[] | undefined, pieces: readonly Piece[]): readonly Instrument[] {
  const names = new Map(pieces.flatMap(piece => piece.gauges).map(name => [gaugeKey(name), name]));
  return [...names.values()].map(name => {
    const known = gaugeOf(gauges ?? [], name);
    const uses = pieces.filter(piece => piece.gauges.some(each => gaugeKey(each) === gaugeKey(name)));
    const days = uses.map(({ date }) => gaugeOf(gauges ?? [], name, date)?.checked);
    const checked = listed(days.map(day => (day === undefined ? '' : isoDate(Math.floor(day)))));
    const said = pieces.map(piece => piece.gaugeKinds.get(gaugeKey(name))).find(kind => kind !== undefined);
    return { name, kind: known && known.kind !== 'other' ? known.kind : (said ?? gaugeKindOf(name)), checked };
  });
}

/** The record's instruments that these pieces name. */
function namedBy({ instruments = [] }: InspectionRecord, pieces: readonly Piece[]): readonly Instrument[] {
  const keys = new Set(pieces.flatMap(({ gauges }) => gauges.map(gaugeKey)));
  return instruments.filter(({ name }) => keys.has(gaugeKey(name)));
}

const PLACES = 2;

/** `702 bar`; of several `701 … 705 bar`, in the unit of the first. */
function spanText(measures: readonly Measure[]): string {
  const [first] = measures;
  if (!first) return '';
  const values = measures.map(({ value, unit }) => convertMeasure(value, unit, first.unit)).sort((a, b) => a.comparedTo(b));
  const ends = [values[0]!, values.at(-1)!].map(value => value.toDecimalPlaces(PLACES).toString());
  return `${[...new Set(ends)].join(' … ')} ${first.unit.symbol}`;
}

const present = <T>(values: readonly (T | undefined)[]): readonly T[] => values.filter(value => value !== undefined);

/** What the pieces say of their measuring and their test; "" where they do not, or where there are none. */
export interface ProofOfPieces {
  readonly caliper: string;
  readonly caliperChecked: string;
  readonly gauge: string;
  readonly gaugeChecked: string;
  readonly hold: string;
  readonly tester: string;
  readonly asked: string;
  readonly reached: string;
}

/**
 * Test and instruments of pieces.
 * @param pieces of the record: all of them, or the one that a row is about
 */
export function proofOfPieces(record: InspectionRecord, pieces: readonly Piece[]): ProofOfPieces {
  const tested = pieces.filter(({ testedAt }) => testedAt !== undefined);
  const some = tested.length > 0 && tested.length < pieces.length ? ` (${tested.length} of ${pieces.length} pieces)` : '';
  const own = namedBy(record, pieces);
  const pressure = namedBy(record, tested).filter(({ kind }) => kind === 'pressure gauge');
  // A name of which nobody knows what it is counts as neither: it stands under “Measured with”.
  const calipers = own.filter(({ kind }) => kind === 'caliper');
  const held = [...present(tested.map(({ testedFor }) => testedFor))].sort((a, b) => a - b);
  const span = [...new Set([held[0], held.at(-1)])].join(' … ');
  return {
    caliper: listed(calipers.map(({ name }) => name)),
    caliperChecked: listed(calipers.map(({ checked }) => checked)),
    gauge: listed(pressure.map(({ name }) => name)),
    gaugeChecked: listed(pressure.map(({ checked }) => checked)),
    hold: held.length > 0 ? `${span} s` : '',
    tester: listed(tested.map(({ by }) => by)),
    asked: spanText(present(pieces.map(({ testPressure }) => testPressure))),
    reached: tested.length > 0 ? `${spanText(present(tested.map(({ testedAt }) => testedAt)))}${some}` : '',
  };
}

/**
 * A record's fields with what its pieces say in place of what is typed for all records; who tested as typed, since a piece names one
 * hand only.
 * @param pieces of the record: all of them, or the one that a row is about
 */
export function fieldsWithProof(record: InspectionRecord, fields: RecordFields, pieces = record.pieces ?? []): RecordFields {
  const own = proofOfPieces(record, pieces);
  return {
    ...fields,
    ...(own.caliper && { caliper: own.caliper, caliperChecked: own.caliperChecked }),
    ...(own.gauge && { gauge: own.gauge, gaugeChecked: own.gaugeChecked }),
    hold: own.hold || fields.hold,
    tester: fields.tester.trim() || own.tester,
  };
}
