import { catalogue } from '../../src/functions/catalogue';
import { cellsOf, treeTables } from '../core/catalogue/treeCatalogue';

/** One value as a host passes it. */
export const one = (value: unknown): any[][] => [[value]];

/** What CATALOGUE answers to tables; those of the invented workshop where none are given. */
export function catalogueOf(tables: Parameters<typeof cellsOf>[0] = treeTables): any[][] {
  return (catalogue as (...cells: any[]) => any[][])(...cellsOf(tables));
}
