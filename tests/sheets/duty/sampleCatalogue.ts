import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Papa from 'papaparse';
import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';

/** Numbers stay texts, as the catalogue reads them too. */
function table(name: string): string[][] {
  const text = readFileSync(join(__dirname, '../../../samples/catalogue', `${name}.csv`), 'utf8');
  return Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { skipEmptyLines: 'greedy' }).data;
}

/** The workshop's catalogue out of samples/catalogue. */
export function sampleCatalogue(): Catalogue {
  const [hoses, fittings, crimps, machines, rates, dies, guards, derating] = [
    'hoses',
    'fittings',
    'crimps',
    'machines',
    'rates',
    'dies',
    'guards',
    'derating',
  ].map(table);
  return readCatalogue({ hoses, fittings, crimps, machines, rates, dies, guards, derating });
}
