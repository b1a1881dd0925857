import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';

/** Tables with prices, the fields of the part's name and of its price. */
export const PRICED = {
  hoses: ['hose', 'pricePerLength'],
  fittings: ['fitting', 'price'],
  guards: ['guard', 'pricePerLength'],
} as const;

export type PricedTable = keyof typeof PRICED;

export const PRICED_TABLES = Object.keys(PRICED) as readonly PricedTable[];

/** Headings of a table's names and of its prices. */
export function pricedHeadings(table: PricedTable): readonly [name: string, price: string] {
  const fields: Readonly<Record<string, { readonly heading: string }>> = catalogueTables[table].fields;
  const [name, price] = PRICED[table];
  return [fields[name]!.heading, fields[price]!.heading];
}
