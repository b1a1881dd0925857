import { READ_PLACES } from '../../core/units/decimalPlaces';
import type { Decimal } from '../../core/units/decimal';
import { limitsText, smallText } from '../table/smallText';
import { typedProofFactor } from '../table/typedFields';
import { fieldsWithProof, proofOfPieces } from './recordProof';
import type { InspectionRecord, Pressure, RecordCrimp, RecordFields, RecordOptions } from './inspectionRecord';

/** Cautions printed on every record. */
export const RECORD_CAUTIONS = [
  'The makers’ current data come first; this record does not replace them.',
  'A rejected crimp stays rejected: scrap it, unless the maker allows crimping again.',
  'Proof-test with liquid, air bled, behind a shield. Never feel for leaks by hand: a fluid-injection wound is an emergency even if it looks small.',
  'The weakest part sets the rating, surges included. Local law, codes and a qualified person decide.',
] as const;

/** A line of a record; "" is left as a line to write on. */
export interface RecordFact {
  readonly label: string;
  readonly value: string;
}

function same(record: InspectionRecord, pick: (crimp: RecordCrimp) => string, own: string): string {
  return [...new Set(record.crimps.map(pick).filter(Boolean))].join(', ') || own;
}

/** The coupling of all crimps; undefined where they differ, so that each row names its own. */
export function sameCoupling({ crimps }: InspectionRecord): string | undefined {
  const [name, ...others] = new Set(crimps.map(({ fitting }) => fitting));
  return others.length === 0 ? name : undefined;
}

function couplingFact(record: InspectionRecord): readonly RecordFact[] {
  const coupling = sameCoupling(record);
  return coupling === undefined ? [] : [{ label: 'Coupling, all ends', value: coupling }];
}

const gaugeFact = ({ gauges = [] }: InspectionRecord): readonly RecordFact[] =>
  gauges.length > 0 ? [{ label: 'Measured with', value: gauges.join('; ') }] : [];

const scrappedFact = ({ scrapped = [] }: InspectionRecord): readonly RecordFact[] =>
  scrapped.length > 0 ? [{ label: 'Scrapped, not in this record', value: scrapped.join(', ') }] : [];

/** How a mean near a limit is decided, in words. Source: ISO 14253-1, as CRIMPCHECK has it. */
export function decisionRule({ fields }: RecordOptions, { unit }: InspectionRecord): string {
  const uncertainty = fields.uncertainty.trim();
  if (uncertainty === '') return 'Decision rule: the mean against its limits as measured; no uncertainty U is taken off them.';
  return `Decision rule: in spec only where the mean lies inside its limits by more than U = ${uncertainty} ${unit} (k = 2); nearer to a limit it is UNSURE (ISO 14253-1).`;
}

/** What was made, of what, by whom, on what, measured with what. */
export function workFacts(record: InspectionRecord, { fields: typed, handle }: RecordOptions): readonly RecordFact[] {
  const fields = fieldsWithProof(record, typed);
  const uncertainty = fields.uncertainty.trim();
  return [
    { label: 'Workshop', value: fields.workshop },
    { label: 'Customer', value: fields.customer },
    { label: 'Record no.', value: fields.number },
    { label: 'Assembly', value: record.assembly },
    { label: 'Order', value: record.order },
    { label: 'Quantity', value: record.quantity },
    { label: 'Hose', value: record.hose },
    { label: 'Hose lot', value: record.hoseLot || fields.hoseLot },
    { label: 'Hose made', value: record.hoseMade || fields.hoseMade },
    ...couplingFact(record),
    { label: 'Coupling lot', value: same(record, crimp => crimp.fittingLot, fields.fittingLot) },
    { label: 'Crimped on', value: same(record, crimp => crimp.made, '') },
    { label: 'Operator', value: same(record, crimp => crimp.operator, fields.operator) },
    { label: 'Machine', value: same(record, crimp => crimp.machine, fields.machine) },
    { label: 'Die set', value: fields.dieSet || same(record, crimp => crimp.die, '') },
    { label: 'Caliper', value: fields.caliper },
    { label: 'Caliper calibrated', value: fields.caliperChecked },
    { label: 'Uncertainty U (k = 2)', value: uncertainty && `${uncertainty} ${record.unit}` },
    { label: 'Catalogue', value: handle },
    ...gaugeFact(record),
    ...scrappedFact(record),
  ];
}

/** Proof pressure by the user's rule; undefined where the working pressure or the factor is not known. */
export function proofPressure({ workingPressure }: InspectionRecord, { factor }: RecordFields): Pressure | undefined {
  const times = typedProofFactor(factor).value;
  if (!workingPressure || !times) return undefined;
  return { value: workingPressure.value.times(times).toDecimalPlaces(2), unit: workingPressure.unit };
}

const pressureText = (pressure: Pressure | undefined) => (pressure ? `${pressure.value} ${pressure.unit}` : '');

/** The proof test; leak, slip and twist stand apart. */
export function proofFacts(record: InspectionRecord, { fields: typed }: RecordOptions): readonly RecordFact[] {
  const fields = fieldsWithProof(record, typed);
  const { factor, rule } = fields;
  const { asked, reached } = proofOfPieces(record.pieces ?? []);
  const byRule = pressureText(proofPressure(record, fields));
  // What the pieces were asked to reach need not be what the rule says today: then it is not said to be by that rule.
  const isByRule = asked === '' || asked === byRule;
  const ruleText = factor.trim() && `${factor.trim()} × working pressure${rule.trim() && `, ${rule.trim()}`}`;
  return [
    { label: 'Working pressure', value: pressureText(record.workingPressure) },
    { label: 'Proof pressure', value: asked || byRule },
    { label: 'Rule', value: isByRule ? ruleText : 'as the pieces were planned' },
    { label: 'Pressure reached', value: reached },
    { label: 'Medium', value: fields.medium },
    { label: 'Gauge', value: fields.gauge },
    { label: 'Gauge calibrated', value: fields.gaugeChecked },
    { label: 'Held for', value: fields.hold },
    { label: 'Tested by', value: fields.tester },
  ];
}

/** A diameter as text; "" where it is not known. */
export function diameter(value: Decimal | undefined, unit: InspectionRecord['unit']): string {
  return value ? smallText(value, unit) : '';
}

/** Readings of a record as text, all with the decimals of the finest; "" where one is not there. */
export function readingTexts({ crimps }: InspectionRecord, { readings }: RecordCrimp, count: number): readonly string[] {
  const places = Math.max(0, ...crimps.flatMap(crimp => crimp.readings.map(reading => reading?.decimalPlaces() ?? 0)));
  return Array.from({ length: count }, (_, index) => readings[index]?.toFixed(Math.min(READ_PLACES, places)) ?? '');
}

/** Target of a crimp with the decimals of its limits; "" where it is not known. */
export function targetText({ target, smallest }: RecordCrimp): string {
  return target?.toFixed(Math.min(4, Math.max(target.decimalPlaces(), smallest?.decimalPlaces() ?? 0))) ?? '';
}

/** Limits of a crimp's mean with equal decimals; "" where they are not known. */
export function recordedLimits({ smallest, largest }: RecordCrimp): string {
  return smallest && largest ? limitsText(smallest, largest, READ_PLACES) : '';
}

const WORDS = {
  TIGHT: 'TIGHT: rejected',
  LOOSE: 'LOOSE: rejected',
  OVAL: 'OVAL: rejected',
  UNSURE: 'UNSURE',
  'IN SPEC': 'IN SPEC',
};

/** The verdict in words; "" where there is none. */
export function verdictText({ verdict }: RecordCrimp): string {
  return verdict ? WORDS[verdict] : '';
}

/** Readings a crimp has room for: of all crimps of the record the most, four at least. */
export function readingCount({ crimps }: InspectionRecord): number {
  return Math.max(4, ...crimps.map(({ readings }) => readings.length));
}

/** Sentences that must be read: what could not be read or used. */
export function recordStops(record: InspectionRecord): readonly string[] {
  const ofCrimps = record.crimps.flatMap(({ piece, end, problem }) =>
    problem ? [`Piece ${piece}${end && `, end ${end}`}: ${problem}`] : [],
  );
  return [...new Set([...record.problems, ...ofCrimps])];
}
