import type { Measure } from '../../cells/sheetCell';
import { convertMeasure } from '../../core/units/measureUnit';
import { gaugeKey } from '../gauges/gauge';
import type { Piece } from '../pieces/piece';
import type { InspectionRecord, RecordFields, RecordUse } from './inspectionRecord';
import type { Instrument } from './instrument';
import { isTested, lacks, namedIn, usesOf } from './instruments';

const listed = (texts: readonly string[]) => [...new Set(texts.filter(Boolean))].join(', ');

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

/** What the pieces say of their test; "" where they do not, or where there are none. */
export interface ProofOfPieces {
  readonly hold: string;
  readonly tester: string;
  readonly asked: string;
  readonly reached: string;
}

/**
 * Test of pieces.
 * @param pieces of a record: all of them, or the one that a row is about
 */
export function proofOfPieces(pieces: readonly Piece[]): ProofOfPieces {
  const tested = pieces.filter(({ testedAt }) => testedAt !== undefined);
  const some = tested.length > 0 && tested.length < pieces.length ? ` (${tested.length} of ${pieces.length} pieces)` : '';
  const held = [...present(tested.map(({ testedFor }) => testedFor))].sort((a, b) => a - b);
  const span = [...new Set([held[0], held.at(-1)])].join(' … ');
  return {
    hold: held.length > 0 ? `${span} s` : '',
    tester: listed(tested.map(({ by }) => by)),
    asked: spanText(present(pieces.map(({ testPressure }) => testPressure))),
    reached: tested.length > 0 ? `${spanText(present(tested.map(({ testedAt }) => testedAt)))}${some}` : '',
  };
}

type Measuring = Pick<RecordFields, 'caliper' | 'caliperChecked' | 'gauge' | 'gaugeChecked'>;
type Named = Pick<Instrument, 'name' | 'checked'>;

/**
 * The calipers and pressure gauges that rows name; of rows that name none the typed one. A name of which nobody knows what it is counts
 * as neither: it stands under “Measured with”.
 */
function measuring(
  { instruments }: Pick<InspectionRecord, 'instruments'>,
  uses: readonly RecordUse[],
  typed: RecordFields,
): Measuring {
  const of = (kind: Instrument['kind'], all: readonly RecordUse[], own: Named): readonly Named[] => {
    const isOwn = own.name.trim() !== '' && lacks(kind, all, instruments);
    const each = [...namedIn(all, kind, instruments), ...(isOwn ? [own] : [])];
    return [...new Map(each.map(one => [gaugeKey(one.name), one])).values()];
  };
  const calipers = of('caliper', uses, { name: typed.caliper, checked: typed.caliperChecked });
  const tested = uses.filter(isTested);
  const pressure = of('pressure gauge', tested, { name: typed.gauge, checked: typed.gaugeChecked });
  return {
    caliper: listed(calipers.map(({ name }) => name)),
    caliperChecked: calipers.length > 0 ? listed(calipers.map(({ checked }) => checked)) : typed.caliperChecked,
    gauge: listed(pressure.map(({ name }) => name)),
    gaugeChecked: pressure.length > 0 ? listed(pressure.map(({ checked }) => checked)) : typed.gaugeChecked,
  };
}

/**
 * A record's fields with what its pieces and rows say in place of what is typed for all records; who tested as typed, since a piece names
 * one hand only.
 * @param pieces of the record: all of them, or the one that a row is about
 * @param uses of the record: all of them, or the one of a row
 */
export function fieldsWithProof(
  record: InspectionRecord,
  fields: RecordFields,
  pieces = record.pieces ?? [],
  uses = usesOf(record),
): RecordFields {
  const own = proofOfPieces(pieces);
  return {
    ...fields,
    ...measuring(record, uses, fields),
    hold: own.hold || fields.hold,
    tester: fields.tester.trim() || own.tester,
  };
}
