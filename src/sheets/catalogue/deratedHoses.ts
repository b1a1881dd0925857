import { blockOf, fixedReference } from '../../workbook/a1';
import { TablePlace } from './tablePlace';
import type { UsableCatalogue } from './usableCatalogue';

/** Rows below the data that belong to it too, so that a hose added there counts. */
const SPARE_ROWS = 20;

/** The column Hose of the table Derating, as a formula names it; undefined where the catalogue has no such table. */
export function deratedHoses({ tables, ranges }: UsableCatalogue): string | undefined {
  if (!tables.derating) return undefined;
  const place = new TablePlace(tables.derating);
  const column = place.column('Hose');
  const rows = Math.min(blockOf(ranges.derating!.address)!.rows, tables.derating.values.length + SPARE_ROWS);
  return column === undefined ? undefined : fixedReference(place.columnRange(column, rows));
}
