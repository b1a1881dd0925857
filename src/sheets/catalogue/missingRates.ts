import { rateKey } from '../../core/catalogue/duplicates';
import { NEEDED_RATES } from '../../core/catalogue/rateNames';
import { blockOf, fixedReference } from '../../workbook/a1';
import { TablePlace } from './tablePlace';
import { inQuotes } from '../../workbook/inQuotes';
import { TextNumbers } from './textNumbers';
import type { UsableCatalogue } from './usableCatalogue';

const quoted = (names: readonly string[]) => `"No rate for ${names.join(', ')}. "`;

/** Rows of Rates that give a rate, counted without `=`: its name without blanks, hyphens and what stands in brackets. */
function countOf(rate: string, names: string, values: string, texts: readonly string[]): string {
  const key = `${rateKey(rate)}(`;
  const bare = `SUBSTITUTE(SUBSTITUTE(${names}," ",""),"-","")&"("`;
  const isNumber = [`ISNUMBER(${values}*1)`, ...texts.map(text => `(${values}=${inQuotes(text)})`)].join('+');
  const counts = texts.length > 0 ? `(${isNumber}>0)` : isNumber;
  return `SUMPRODUCT((LEFT(${bare},${key.length})="${key}")*(LEN(${values})>0)*${counts})`;
}

/** Which rates are missing without which no cost is known, as a formula without `=`; "" where all are there, each once. */
export function missingRatesFormula({ tables, ranges }: UsableCatalogue): string {
  if (!tables.rates) return quoted(NEEDED_RATES);
  const place = new TablePlace(tables.rates);
  const [name, value] = [place.column('Rate'), place.column('Value')];
  if (name === undefined || value === undefined) return quoted(NEEDED_RATES);
  // Rows that are added below belong to it, as far as the catalogue's range goes.
  const rows = Math.min(blockOf(ranges.rates!.address)!.rows, tables.rates.values.length + 20);
  const [names, values] = [name, value].map(column => fixedReference(place.columnRange(column, rows))) as [string, string];
  const numbers = new TextNumbers('rates', tables.rates);
  const texts = new Set(place.dataRows().flatMap(row => numbers.at(row, value)?.text ?? []));
  return NEEDED_RATES.map(rate => `IF(${countOf(rate, names, values, [...texts])}=1,"",${quoted([rate])})`).join('&');
}
