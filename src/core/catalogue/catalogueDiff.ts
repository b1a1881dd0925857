import type { Catalogue } from './catalogue';
import { partKey } from './partName';
import { catalogueTables, TABLE_NAMES, type TableName } from './tables/catalogueTables';

type Value = string | number | undefined;

/** One field that differs between the two catalogues. */
export interface FieldChange {
  /** Heading of the column. */
  readonly heading: string;
  readonly before: Value;
  readonly after: Value;
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

function byName(table: TableName, rows: readonly AnyRow[]): Map<string, { name: string; row: AnyRow }> {
  return new Map(
    rows.map(row => {
      const parts = NAMED_BY[table].map(field => row[field]);
      const name = parts.filter(part => part !== undefined).join(' + ');
      return [parts.map(part => partKey(String(part ?? ''))).join('\u001f'), { name, row }];
    }),
  );
}

function changedFields(table: TableName, before: AnyRow, after: AnyRow): FieldChange[] {
  return Object.entries(catalogueTables[table].fields)
    .filter(([field]) => before[field] !== after[field])
    .map(([field, { heading }]) => ({ heading, before: before[field], after: after[field] }));
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
 * Both catalogues' numbers are compared as they are, so the two should be in the same units.
 */
export function catalogueDiff(before: Catalogue, after: Catalogue): readonly RowChange[] {
  return TABLE_NAMES.flatMap(table =>
    tableDiff(table, before[table] as unknown as readonly AnyRow[], after[table] as unknown as readonly AnyRow[]),
  );
}
