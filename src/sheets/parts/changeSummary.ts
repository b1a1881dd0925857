import type { RowChange } from '../../core/catalogue/catalogueDiff';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { PRICED_TABLES, pricedHeadings } from '../catalogue/pricedTables';
import { countedText } from '../../core/countedText';

/** What people call one row and several rows of a table. */
const ROWS: Record<TableName, readonly [one: string, many: string]> = {
  hoses: ['hose', 'hoses'],
  fittings: ['coupling', 'couplings'],
  crimps: ['crimp row', 'crimp rows'],
  machines: ['machine row', 'machine rows'],
  rates: ['rate', 'rates'],
  dies: ['die', 'dies'],
  guards: ['guard', 'guards'],
  derating: ['derating row', 'derating rows'],
  fluids: ['fluid row', 'fluid rows'],
};

const PRICES: ReadonlySet<string> = new Set(PRICED_TABLES.map(table => pricedHeadings(table)[1]));

const isPrice = ({ heading }: { readonly heading: string }) => PRICES.has(heading);

/** What happens to rows of one table, apart from their prices: `2 hoses new, 1 hose removed`. */
function changesText(table: TableName, changes: readonly RowChange[]): string[] {
  const own = changes.filter(change => change.table === table);
  const changed = own.filter(change => change.kind === 'changed' && !change.fields.every(isPrice)).length;
  const [added, removed] = (['added', 'removed'] as const).map(kind => own.filter(change => change.kind === kind).length);
  return [
    ...(added ? [`${countedText(added, ...ROWS[table])} new`] : []),
    ...(changed ? [`${countedText(changed, ...ROWS[table])} changed`] : []),
    ...(removed ? [`${countedText(removed, ...ROWS[table])} removed`] : []),
  ];
}

/**
 * Changes of a catalogue in half a sentence, prices first.
 * @example changeSummary(…) // 12 prices, 1 crimp row changed
 */
export function changeSummary(changes: readonly RowChange[]): string {
  const prices = changes.reduce(
    (count, change) => count + (change.kind === 'changed' ? change.fields.filter(isPrice).length : 0),
    0,
  );
  return [
    ...(prices > 0 ? [countedText(prices, ...['price', 'prices'])] : []),
    ...TABLE_NAMES.flatMap(table => changesText(table, changes)),
  ].join(', ');
}
