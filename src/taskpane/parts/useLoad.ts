import { useCallback, useMemo, useRef, useState } from 'react';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import { Stopped } from '../../workbook/watch';
import type { Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { chosenTables, loadedCatalogue, type HeadingMaps, type LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import { firstOfEach, type LoadedTable } from '../../sheets/parts/loadedTable';
import { tableFromRange } from '../../sheets/parts/tableFromRange';
import { tablesFromFiles, type PartsFileReader, type PickedFile } from '../../sheets/parts/tablesFromFiles';
import { blockOf, overlap } from '../../workbook/a1';
import { errorSentence } from '../../workbook/errorSentence';

/** What is being read, and how far. */
export interface Reading {
  readonly name: string;
  readonly share: number | undefined;
  /** It is to be stopped, which waits for a piece that cannot be interrupted: the unpacking of an .xlsx. */
  readonly isStopping?: boolean;
}

interface Loaded {
  readonly tables: readonly LoadedTable[];
  readonly taken: ReadonlyMap<string, TableName>;
  readonly refusals: readonly string[];
}

const NOTHING: Loaded = { tables: [], taken: new Map(), refusals: [] };

/** A file of the same name, or a range of this workbook that shares cells, is the same table again. */
function isSameTable(one: LoadedTable, other: LoadedTable): boolean {
  if (!one.at || !other.at) return !one.at && !other.at && one.label === other.label;
  return one.at.sheet === other.at.sheet && overlap(blockOf(one.at.address)!, blockOf(other.at.address)!) !== undefined;
}

/** Tables of one sheet are told apart by their cells. */
function toldApart(tables: readonly LoadedTable[]): readonly LoadedTable[] {
  const onSheet = (sheet: string) => tables.filter(({ at }) => at?.sheet === sheet).length;
  return tables.map(table =>
    table.at && onSheet(table.at.sheet) > 1 ? { ...table, label: `sheet ${table.at.sheet}, ${table.at.address}` } : table,
  );
}

/** What new tables are taken for: those that were there keep theirs. */
function withTables(
  old: Loaded,
  tables: readonly LoadedTable[],
  refusals: readonly string[],
  spared: ReadonlySet<TableName> = new Set(),
): Loaded {
  const taken = [...firstOfEach(tables)].filter(([, table]) => !spared.has(table));
  const claimed = new Set(taken.map(([, table]) => table));
  // A table that comes later replaces one of the same kind that came before.
  const kept = [...old.taken].filter(([, table]) => !claimed.has(table));
  return {
    tables: toldApart([...old.tables.filter(before => !tables.some(table => isSameTable(before, table))), ...tables]),
    taken: new Map([...kept, ...taken]),
    refusals: [...refusals],
  };
}

/** Loads tables from files and from this workbook, and tells what catalogue they would make. */
export function useLoad(
  workbook: Workbook,
  readPartsFile: PartsFileReader,
  standing: WorkbookCatalogue | undefined,
  maps: HeadingMaps,
) {
  const [loaded, setLoaded] = useState(NOTHING);
  const [reading, setReading] = useState<Reading>();
  const turn = useRef(0);
  const stop = useRef<AbortController | undefined>(undefined);

  const addFiles = useCallback(
    async (files: readonly PickedFile[], spared?: ReadonlySet<TableName>) => {
      const controller = new AbortController();
      stop.current?.abort();
      stop.current = controller;
      let name = '';
      try {
        const found = await tablesFromFiles(readPartsFile, files, ++turn.current, {
          signal: controller.signal,
          onFile: file => setReading({ name: (name = file), share: undefined }),
          onProgress: share => setReading(old => ({ ...old, name, share })),
        });
        setLoaded(old => withTables(old, found.tables, found.refusals, spared));
      } catch (error) {
        const why = error instanceof Stopped ? 'Reading was stopped. Nothing was loaded.' : errorSentence(error);
        setLoaded(old => ({ ...old, refusals: [why] }));
      } finally {
        if (stop.current === controller) setReading(undefined);
      }
    },
    [readPartsFile],
  );

  /** Adds a sheet of this workbook, or the selected range. */
  const addRange = useCallback(
    async (sheet: string | undefined) => {
      try {
        const content = sheet === undefined ? await workbook.selection() : await workbook.used(sheet);
        if (!content) throw new Error(`Sheet ${sheet} is empty.`);
        if (content.values.length < 2) throw new Error('Select the whole table with its headings, or choose its sheet.');
        const table = tableFromRange(content, ++turn.current);
        setLoaded(old => withTables(old, [table], []));
      } catch (error) {
        setLoaded(old => ({ ...old, refusals: [errorSentence(error)] }));
      }
    },
    [workbook],
  );

  const take = useCallback((id: string, table: TableName | undefined) => {
    setLoaded(old => {
      const taken = new Map(old.taken);
      if (table) taken.set(id, table);
      else taken.delete(id);
      return { ...old, taken };
    });
  }, []);

  const clear = useCallback(() => setLoaded(NOTHING), []);
  const chosen = useMemo(() => chosenTables(loaded.tables, loaded.taken, maps), [loaded.tables, loaded.taken, maps]);
  const result: LoadedCatalogue | undefined = useMemo(
    () => (chosen.length > 0 ? loadedCatalogue(chosen, standing) : undefined),
    [chosen, standing],
  );
  return {
    ...loaded,
    reading,
    chosen,
    result,
    addFiles,
    addRange,
    take,
    cancel: () => {
      stop.current?.abort();
      setReading(old => old && { ...old, isStopping: true });
    },
    clear,
  };
}
