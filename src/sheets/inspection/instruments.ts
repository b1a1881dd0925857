import { isoDate } from '../../core/units/sheetDate';
import { gaugeKey, gaugeKindOf, gaugeOf, type Gauge } from '../gauges/gauge';
import type { GaugeUse } from '../gauges/gaugeUse';
import type { Instrument } from './instrument';
import type { InspectionRecord, RecordUse } from './inspectionRecord';

/** What a record was measured with: its pieces, and the rows of readings that are on no sheet Pieces. */
export const usesOf = ({ pieces = [], crimps }: Pick<InspectionRecord, 'pieces' | 'crimps'>): readonly RecordUse[] => [
  ...new Set<RecordUse>([...pieces, ...crimps.flatMap(({ measuredWith }) => measuredWith ?? [])]),
];

const listed = (texts: readonly string[]) => [...new Set(texts.filter(Boolean))].join(', ');
const isNamed = (name: string, { gauges }: GaugeUse) => gauges.some(each => gaugeKey(each) === gaugeKey(name));

/** What the names in rows are: by the sheet Gauges, by the heading of their column, or by their own words; else nobody knows. */
export function instrumentsOf(gauges: readonly Gauge[] | undefined, uses: readonly GaugeUse[]): readonly Instrument[] {
  const names = new Map(uses.flatMap(use => use.gauges).map(name => [gaugeKey(name), name]));
  return [...names.values()].map(name => {
    const known = gaugeOf(gauges ?? [], name);
    const days = uses.filter(use => isNamed(name, use)).map(({ date }) => gaugeOf(gauges ?? [], name, date)?.checked);
    const checked = listed(days.map(day => (day === undefined ? '' : isoDate(Math.floor(day)))));
    const said = uses.map(use => use.gaugeKinds.get(gaugeKey(name))).find(kind => kind !== undefined);
    return { name, kind: known && known.kind !== 'other' ? known.kind : (said ?? gaugeKindOf(name)), checked };
  });
}

/** The instruments of one kind that these rows name. */
export const namedIn = (uses: readonly GaugeUse[], kind: Instrument['kind'], instruments: readonly Instrument[] = []) =>
  instruments.filter(each => each.kind === kind && uses.some(use => isNamed(each.name, use)));

/** True for what was tested, as far as its sheet says: a piece that was not has a gauge in its row for later. */
export const isTested = (use: RecordUse): boolean => !('testedAt' in use) || use.testedAt !== undefined;

/** The rows that name no instrument of a kind: what is typed for all records is meant for them. */
export const withoutNamed = (uses: readonly RecordUse[], kind: Instrument['kind'], instruments?: readonly Instrument[]) =>
  uses.filter(use => namedIn([use], kind, instruments).length === 0);

/** Whether what is typed counts: there are no rows yet, or some that name none. */
export const lacks = (kind: Instrument['kind'], uses: readonly RecordUse[], instruments?: readonly Instrument[]): boolean =>
  uses.length === 0 || withoutNamed(uses, kind, instruments).length > 0;
