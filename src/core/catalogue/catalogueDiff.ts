import { Decimal } from '../units/decimal';
import { convertMeasure, type MeasureUnit } from '../units/measureUnit';
import type { Catalogue } from './catalogue';
import { unitOfField, type CatalogueUnits } from './catalogueUnits';
import { cellNumber } from './cellNumber';
import { rateKey } from './duplicates';
import { partKey } from './partName';
import type { TableSchema } from './tableSchema';
import { catalogueTables, TABLE_NAMES, type TableName } from './tables/catalogueTables';

type Value = string | number | undefined;

/** One field that differs between the two catalogues. */
export interface FieldChange {
  /** Heading of the column. */
  readonly heading: string;
  readonly before: Value;
  readonly after: Value;
  /** Of a price: by how much it rises or falls, in per cent to one decimal; undefined where either is blank or was 0. */
  readonly percent?: number;
}

/** A row that was added, removed, or changed in some fields. */
export type RowChange =
  | { readonly kind: 'added' | 'removed'; readonly table: TableName; readonly name: string }
  | { readonly kind: 'changed'; readonly table: TableName; readonly name: string; readonly fields: readonly FieldChange[] };

/** What names a row of each table. */
export const NAMED_BY: Record<TableName, readonly string[]> = {
  hoses: ['hose'],
  fittings: ['fitting'],
  crimps: ['hose', 'fitting'],
  machines: ['machine', 'die', 'hose', 'fitting', 'date'],
  rates: ['rate'],
  dies: ['die'],
  guards: ['guard', 'size'],
  derating: ['hose', 'temperature'],
  fluids: ['fluid', 'hose'],
};

type AnyRow = Readonly<Record<string, Value>>;

/** Share of a number by which it may differ from another that was converted: numbers keep 15 digits. */
const NOISE = 1e-12;

function isSame(before: Value, after: Value): boolean {
  if (typeof before !== 'number' || typeof after !== 'number') return before === after;
  return Math.abs(before - after) <= NOISE * Math.abs(after);
}

/** The unit that a cell of a table is in; undefined where it has none. */
function unitOf(table: TableName, field: string, row: AnyRow, units: CatalogueUnits): MeasureUnit | undefined {
  const isFreeHose = table === 'rates' && field === 'value' && rateKey(String(row.rate)) === rateKey('shortest free hose');
  return isFreeHose ? units.length : unitOfField(units, (catalogueTables[table].fields as TableSchema['fields'])[field]!);
}

/** A row of one catalogue in the units of another. */
function inUnits(table: TableName, row: AnyRow, from: CatalogueUnits, to: CatalogueUnits): AnyRow {
  const turned: Record<string, Value> = { ...row };
  for (const [field, value] of Object.entries(row)) {
    if (typeof value !== 'number') continue;
    const [old, now] = [unitOf(table, field, row, from), unitOf(table, field, row, to)];
    if (old && now && old.symbol !== now.symbol) turned[field] = cellNumber(convertMeasure(new Decimal(value), old, now));
  }
  return turned;
}

function byName(table: TableName, rows: readonly AnyRow[]): Map<string, { name: string; row: AnyRow }> {
  return new Map(
    rows.map(row => {
      const parts = NAMED_BY[table].map(field => row[field]);
      const name = parts.filter(part => part !== undefined).join(' + ');
      return [parts.map(part => partKey(String(part ?? ''))).join('\u001f'), { name, row }];
    }),
  );
}

export const PRICES: ReadonlySet<string> = new Set(['price', 'pricePerLength']);

function percentOf(field: string, before: Value, after: Value): { percent?: number } {
  if (!PRICES.has(field) || typeof before !== 'number' || typeof after !== 'number' || before === 0) return {};
  const share = new Decimal(after).div(before).minus(1).times(100);
  return { percent: share.toDecimalPlaces(1).toNumber() };
}

function changedFields(table: TableName, before: AnyRow, after: AnyRow): FieldChange[] {
  return Object.entries(catalogueTables[table].fields)
    .filter(([field]) => !isSame(before[field], after[field]))
    .map(([field, { heading }]) => ({
      heading,
      before: before[field],
      after: after[field],
      ...percentOf(field, before[field], after[field]),
    }));
}

function tableDiff(table: TableName, before: readonly AnyRow[], after: readonly AnyRow[]): RowChange[] {
  const [old, current] = [byName(table, before), byName(table, after)];
  const changes: RowChange[] = [];
  for (const [key, { name, row }] of current) {
    const was = old.get(key);
    if (!was) changes.push({ kind: 'added', table, name });
    else {
      const fields = changedFields(table, was.row, row);
      if (fields.length > 0) changes.push({ kind: 'changed', table, name, fields });
    }
  }
  for (const [key, { name }] of old) if (!current.has(key)) changes.push({ kind: 'removed', table, name });
  return changes;
}

/**
 * What a new catalogue adds, changes and removes, table by table. Good rows only: one that is left out counts as not there.
 * Numbers are compared in the units of the new catalogue, into which those of the old one are converted: 200 bar are 2,900.75 psi.
 */
export function catalogueDiff(before: Catalogue, after: Catalogue): readonly RowChange[] {
  return TABLE_NAMES.flatMap(table => {
    const old = (before[table] as unknown as readonly AnyRow[]).map(row => inUnits(table, row, before.units, after.units));
    return tableDiff(table, old, after[table] as unknown as readonly AnyRow[]);
  });
}
