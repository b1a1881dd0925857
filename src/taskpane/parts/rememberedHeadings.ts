import { useCallback, useMemo } from 'react';
import * as v from 'valibot';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import { useStored } from '../controls/useStored';
import type { HeadingMaps } from '../../sheets/parts/loadedCatalogue';

/** A heading of a table that somebody mapped: what came, what it is read as. */
const Entries = v.array(v.tuple([v.picklist(TABLE_NAMES), v.string(), v.string()]));
type Entry = v.InferOutput<typeof Entries>[number];

const MOST = 2000;

/** What a store gave, which anything may have written to; nothing where it is not what this view writes. */
export function entriesOf(stored: unknown): readonly Entry[] {
  const read = v.safeParse(Entries, stored);
  return read.success ? read.output : [];
}

/** Entries as maps; a later one wins. */
export function headingMaps(entries: readonly Entry[]): HeadingMaps {
  const maps = new Map<TableName, Map<string, string>>();
  for (const [table, from, to] of entries) {
    if (!maps.has(table)) maps.set(table, new Map());
    maps.get(table)!.set(from, to);
  }
  return maps;
}

/** A heading as it came, and what it is mapped to. */
export type HeadingChange = readonly [from: string, to: string];

/** Entries with one heading mapped anew; "" = as it came. */
export function withHeading(entries: readonly Entry[], table: TableName, from: string, to: string): readonly Entry[] {
  const others = entries.filter(([name, heading]) => name !== table || heading !== from);
  return to === '' ? others : [...others, [table, from, to] satisfies Entry].slice(-MOST);
}

/** The mapping of headings, kept on this computer from one visit to the next. */
export function useRememberedHeadings(): readonly [HeadingMaps, (table: TableName, changes: readonly HeadingChange[]) => void] {
  const [stored, setStored] = useStored<{ entries: unknown }>('partsHeadings', { entries: [] });
  const entries = useMemo(() => entriesOf(stored.entries), [stored.entries]);
  const maps = useMemo(() => headingMaps(entries), [entries]);
  const change = useCallback(
    (table: TableName, changes: readonly HeadingChange[]) =>
      setStored({ entries: changes.reduce((kept, [from, to]) => withHeading(kept, table, from, to), entries) }),
    [entries, setStored],
  );
  return [maps, change];
}
