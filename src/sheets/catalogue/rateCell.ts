import { fixedReference } from '../../workbook/a1';
import { rateKey } from '../../core/catalogue/duplicates';
import { partKey } from '../../core/catalogue/partName';
import { TablePlace } from './tablePlace';
import type { UsableCatalogue } from './usableCatalogue';

/** The cell of a rate, as a formula names it. */
export function rateCell({ tables }: UsableCatalogue, rate: string): string | undefined {
  if (!tables.rates) return undefined;
  const place = new TablePlace(tables.rates);
  const [names, values] = [place.column('Rate'), place.column('Value')];
  if (names === undefined || values === undefined) return undefined;
  const row = place.dataRows().find(at => rateKey(partKey(String(tables.rates!.values[at]![names]))) === rateKey(rate));
  return row === undefined ? undefined : fixedReference(place.cell(row, values));
}
