import type { RawCell, RawTable } from '../../core/catalogue/rawTable';
import type { FileSheet, PartsFile } from '../../core/catalogue/partsFile';
import { breathe, Stopped, type Watch } from '../../workbook/watch';
import { tableOfSheet } from '../catalogue/guessTable';
import { loadedTable, type LoadedTable } from './loadedTable';

/** What came of the files that were picked. */
export interface FileTables {
  readonly tables: readonly LoadedTable[];
  /** Files and sheets that could not be read, each in a sentence. */
  readonly refusals: readonly string[];
}

/** How a host reads a file: its sheets as tables, by name. */
export type PartsFileReader = (file: PartsFile, watch?: Watch) => Promise<ReadonlyMap<string, FileSheet>>;

/** A file whose bytes are read when it is its turn. */
export interface PickedFile {
  readonly name: string;
  bytes(): Promise<Uint8Array>;
}

const filled = (cells: readonly RawCell[]) => cells.filter(cell => cell !== null && cell !== '').length;

/** Headings side by side and something below them. */
const isTable = (raw: RawTable) => raw.slice(1).some(cells => filled(cells) > 0) && raw.some(cells => filled(cells) > 1);

const NO_TABLE = 'holds no table (a row of headings, a part in each row below): is it the right file?';

/** Why a file gives nothing to load; undefined where it does. */
function nothingIn(name: string, tables: readonly LoadedTable[], found: readonly LoadedTable[]): string | undefined {
  if (tables.length > 0) return undefined;
  const heads = found.filter(({ knownHeadings }) => knownHeadings > 1);
  const isText = found.some(({ id }) => id.endsWith(' '));
  if (heads.length === 0 && isText && /\.xls[xm]$/i.test(name)) return `${name} is not an .xlsx file, or it is damaged`;
  return heads.length > 0 ? `${name} has headings but no rows below them` : `${name} ${NO_TABLE}`;
}

async function tablesOfFile(read: PartsFileReader, file: PartsFile, id: string, watch: Watch): Promise<FileTables> {
  const found: LoadedTable[] = [];
  const refusals: string[] = [];
  for (const [sheet, { table, reason, ...rest }] of await read(file, watch)) {
    const label = sheet === '' ? file.name : `${file.name}, sheet ${sheet}`;
    if (!table) refusals.push(reason);
    else if (table.length > 0) {
      const came = { raw: table, row: 0, column: 0, isFile: sheet === '', ...rest };
      found.push(loadedTable(`${id} ${sheet}`, label, sheet === '' ? file.name : sheet, came));
    }
  }
  // Where sheets are named as the tables, the others are something else, whatever their headings look like.
  const named = (table: LoadedTable) => tableOfSheet(table.id.slice(id.length + 1));
  // A sheet that is named as a table and has its headings only is an empty one of these.
  const tables = found.filter(table => isTable(table.raw) || (named(table) && table.knownHeadings > 0));
  const sure = tables.some(named) ? tables.map(table => ({ ...table, guess: named(table) })) : tables;
  const nothing = refusals.length > 0 ? undefined : nothingIn(file.name, tables, found);
  return { tables: sure, refusals: nothing ? [nothing] : refusals };
}

/**
 * Reads files one after the other; one that cannot be read does not keep the others from being read.
 * @param read how the host reads one
 * @param turn tells these files from those that were read before
 * @throws Stopped where the user stops it
 */
export async function tablesFromFiles(
  read: PartsFileReader,
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
      const found = await tablesOfFile(read, { name, bytes: await bytes() }, `${turn}.${index}`, watch);
      tables.push(...found.tables);
      refusals.push(...found.refusals);
    } catch (error) {
      if (error instanceof Stopped) throw error;
      refusals.push(error instanceof Error ? error.message : `${name} could not be read`);
    }
  }
  return { tables, refusals };
}
