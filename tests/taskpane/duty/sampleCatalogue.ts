import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Catalogue } from '../../../src/core/catalogue/catalogue';
import { readCatalogue } from '../../../src/core/catalogue/readCatalogue';
import { readCsv } from '../../../src/host/catalogueFile/readCsv';

const table = (name: string) =>
  readCsv(`${name}.csv`, readFileSync(join(__dirname, '../../../samples/catalogue', `${name}.csv`)));

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
