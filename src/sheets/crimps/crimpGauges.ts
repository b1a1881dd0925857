import { gaugeKey, gaugeKindOf, type GaugeKind } from '../gauges/gauge';
import type { GaugeUse } from '../gauges/gaugeUse';
import { namesIn } from '../table/namesInCell';
import type { CrimpRowReader } from './crimpRowReader';

/** What a column headed `Gauge` holds: what its own name or heading says; with no column of calipers beside it, the readings are its. */
function kindIn(reader: CrimpRowReader, name: string): GaugeKind {
  const said = [name, reader.heading('gauge')].map(gaugeKindOf).find(kind => kind !== 'other');
  return said ?? (reader.has('caliper') ? 'other' : 'caliper');
}

/** The gauges that the rows of a crimp name. */
export function gaugesOf(reader: CrimpRowReader): Omit<GaugeUse, 'date'> {
  const [calipers, others] = [namesIn(reader.list('caliper')), namesIn(reader.list('gauge'))];
  const kinds = [
    ...others.map(name => [gaugeKey(name), kindIn(reader, name)] as const).filter(([, kind]) => kind !== 'other'),
    ...calipers.map(name => [gaugeKey(name), 'caliper'] as const),
  ];
  const names = new Map([...calipers, ...others].map(name => [gaugeKey(name), name]));
  return { gauges: [...names.values()], gaugeKinds: new Map(kinds) };
}
