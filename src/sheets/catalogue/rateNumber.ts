import { fixedReference } from '../../workbook/a1';
import { rateKey } from '../../core/catalogue/duplicates';
import { partKey } from '../../core/catalogue/partName';
import { TablePlace } from './tablePlace';
import { TextNumbers } from './textNumbers';
import type { UsableCatalogue } from './usableCatalogue';

/** The number of a rate for a formula, without `=`: its cell, or what the catalogue reads of its text. */
export function rateNumber({ tables }: UsableCatalogue, rate: string): string | undefined {
  if (!tables.rates) return undefined;
  const place = new TablePlace(tables.rates);
  const [names, values] = [place.column('Rate'), place.column('Value')];
  if (names === undefined || values === undefined) return undefined;
  const row = place.dataRows().find(at => rateKey(partKey(String(tables.rates!.values[at]![names]))) === rateKey(rate));
  if (row === undefined) return undefined;
  return new TextNumbers('rates', tables.rates).formula(fixedReference(place.cell(row, values)), row, values);
}
