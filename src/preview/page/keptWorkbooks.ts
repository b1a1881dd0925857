import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import * as v from 'valibot';
import type { OpenedWorkbook } from '../xlsx/readXlsx';

/** A workbook with changes that stand in no file yet. */
export interface KeptWorkbook {
  readonly title: string;
  /** When it was kept, in milliseconds of the clock. */
  readonly at: number;
  readonly opened: OpenedWorkbook;
}

interface Store extends DBSchema {
  workbooks: { key: string; value: KeptWorkbook };
}

/** What a browser kept for another version of this page may be anything. */
const Kept = v.object({
  title: v.string(),
  at: v.number(),
  opened: v.looseObject({
    data: v.looseObject({ id: v.string(), sheetOrder: v.array(v.string()), sheets: v.record(v.string(), v.unknown()) }),
    cells: v.array(v.unknown()),
    notes: v.array(v.string()),
  }),
});

const LOCK = 'benchrow.page.';
let database: Promise<IDBPDatabase<Store>> | undefined;

function store(): Promise<IDBPDatabase<Store>> {
  database ??= openDB<Store>('benchrow', 1, { upgrade: made => void made.createObjectStore('workbooks') });
  return database;
}

/** Name under which this page keeps its workbook; as long as the page lives it holds a lock of that name. */
const own = (() => {
  const id = `${Date.now()}-${Math.random().toString(36).slice(2)}`;
  if (typeof navigator !== 'undefined') navigator.locks?.request(LOCK + id, () => new Promise(() => {})).catch(() => undefined);
  return id;
})();

/** Keeps what is open in this page, in the place of what was kept before. Where the browser keeps nothing, nothing is kept. */
export async function keep(workbook: KeptWorkbook): Promise<void> {
  try {
    await (await store()).put('workbooks', workbook, own);
  } catch {
    // A private window, or a full disk: asking before the page is left is all that remains.
  }
}

/** Forgets what a page kept; without a name, what this one did. */
export async function forget(key: string = own): Promise<void> {
  try {
    await (await store()).delete('workbooks', key);
  } catch {
    // As above.
  }
}

/** What pages kept that are no more, the newest first. */
export async function leftBehind(): Promise<readonly (KeptWorkbook & { readonly key: string })[]> {
  try {
    const held = new Set((await navigator.locks?.query())?.held?.map(({ name }) => name));
    const keys = (await (await store()).getAllKeys('workbooks')).filter(key => key !== own && !held.has(LOCK + key));
    const found = await Promise.all(
      keys.map(async key => ({ key, kept: (await (await store()).get('workbooks', key)) as unknown })),
    );
    return found
      .flatMap(({ key, kept }) => (v.is(Kept, kept) ? [{ ...(kept as unknown as KeptWorkbook), key }] : []))
      .sort((a, b) => b.at - a.at);
  } catch {
    return [];
  }
}
