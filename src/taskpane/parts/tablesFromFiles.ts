import { readPartsFile, type PartsFile } from '../../host/catalogueFile/readPartsFile';
import { breathe, Stopped, type Watch } from '../../host/catalogueFile/watch';
import { loadedTable, tableOfSheet, type LoadedTable } from './loadedTable';

/** What came of the files that were picked. */
export interface FileTables {
  readonly tables: readonly LoadedTable[];
  /** Files and sheets that could not be read, each in a sentence. */
  readonly refusals: readonly string[];
}

/** A file whose bytes are read when it is its turn. */
export interface PickedFile {
  readonly name: string;
  bytes(): Promise<Uint8Array>;
}

async function tablesOfFile(file: PartsFile, id: string, watch: Watch): Promise<FileTables> {
  const tables: LoadedTable[] = [];
  const refusals: string[] = [];
  for (const [sheet, found] of await readPartsFile(file, watch)) {
    const label = sheet === '' ? file.name : `${file.name}, sheet ${sheet}`;
    if (!found.table) refusals.push(found.reason);
    else if (found.table.length > 0) {
      const came = { raw: found.table, row: 0, column: 0, isFile: sheet === '' };
      tables.push(loadedTable(`${id} ${sheet}`, label, sheet === '' ? file.name : sheet, came));
    }
  }
  // Where sheets are named as the tables, the others are something else, whatever their headings look like.
  const named = (table: LoadedTable) => tableOfSheet(table.id.slice(id.length + 1));
  const sure = tables.some(named) ? tables.map(table => ({ ...table, guess: named(table) })) : tables;
  return { tables: sure, refusals };
}

/**
 * Reads files one after the other; one that cannot be read does not keep the others from being read.
 * @param turn tells these files from those that were read before
 * @throws Stopped where the user stops it
 */
export async function tablesFromFiles(
  files: readonly PickedFile[],
  turn: number,
  watch: Watch & { readonly onFile?: (name: string) => void },
): Promise<FileTables> {
  const tables: LoadedTable[] = [];
  const refusals: string[] = [];
  for (const [index, { name, bytes }] of files.entries()) {
    watch.onFile?.(name);
    await breathe(watch);
    try {
      const found = await tablesOfFile({ name, bytes: await bytes() }, `${turn}.${index}`, watch);
      tables.push(...found.tables);
      refusals.push(...found.refusals);
    } catch (error) {
      if (error instanceof Stopped) throw error;
      refusals.push(error instanceof Error ? error.message : `${name} could not be read`);
    }
  }
  return { tables, refusals };
}
