import { UnreadableTable } from './fileLimits';
import { readCsv } from './readCsv';
import { readWorkbookFile, type FileSheet } from './readWorkbookFile';
import type { Watch } from './watch';

/** A file that somebody picked or dropped. */
export interface PartsFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const starts = (bytes: Uint8Array, ...with_: number[]) => with_.every((byte, index) => bytes[index] === byte);
const isArchive = (bytes: Uint8Array) => starts(bytes, 0x50, 0x4b);
/** Compound files: workbooks of before 2007, and locked ones. */
const isCompound = (bytes: Uint8Array) => starts(bytes, 0xd0, 0xcf, 0x11, 0xe0);
const isWideText = (bytes: Uint8Array) => starts(bytes, 0xff, 0xfe) || starts(bytes, 0xfe, 0xff);
const LOOK_AT = 4096;

/**
 * The tables of a parts file by sheet; that of a .csv under "". What the file is follows from its content, not from its name.
 * @throws UnreadableTable with a sentence where it cannot be read; Stopped where the user stops it
 */
export async function readPartsFile({ name, bytes }: PartsFile, watch: Watch = {}): Promise<ReadonlyMap<string, FileSheet>> {
  if (isArchive(bytes)) return readWorkbookFile(name, bytes, watch);
  if (isCompound(bytes)) {
    throw new UnreadableTable(`${name} is an old .xls workbook or has a password: save it as .xlsx without one, then load that`);
  }
  if (!isWideText(bytes) && bytes.subarray(0, LOOK_AT).includes(0)) {
    throw new UnreadableTable(`${name} is neither an .xlsx workbook nor a text file: load .xlsx or .csv`);
  }
  return new Map([['', { table: await readCsv(name, bytes, watch) }]]);
}
