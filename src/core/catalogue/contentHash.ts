import { sha256 } from '../hash/sha256';
import { utf8 } from '../hash/utf8';
import type { CatalogueUnits } from './catalogueUnits';
import type { ReadRow } from './readRows';
import { catalogueTables, TABLE_NAMES, type TableName } from './tables/catalogueTables';

function cell(value: string | number | undefined): string {
  if (value === undefined) return ';';
  return typeof value === 'number' ? `${value};` : `${value.length}:${value};`;
}

function rowText(row: ReadRow, keys: readonly string[]): string {
  let text = '';
  for (const key of keys) text += cell(row.values[key]);
  if (row.unread) for (const key of keys) text += cell(row.unread[key]);
  return text;
}

/**
 * Hash of what a catalogue says: its units and the known fields of all rows, in row order. Column order, unknown columns, blank rows and
 * how a number was typed do not matter; every text stands with its length, so that no two contents are written alike.
 * @returns 64 hexadecimal digits; the handle shows the first eight
 */
export function contentHash(tables: Readonly<Record<TableName, readonly ReadRow[]>>, units: CatalogueUnits): string {
  const parts = Object.values(units).map(unit => unit?.symbol ?? '');
  for (const name of TABLE_NAMES) {
    const keys = Object.keys(catalogueTables[name].fields);
    parts.push(catalogueTables[name].sheet);
    for (const row of tables[name]) parts.push(rowText(row, keys));
  }
  return sha256(utf8(parts.join('\n')));
}
