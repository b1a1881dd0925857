import type { FileSheet, PartsFile } from '../../core/catalogue/partsFile';
import { UnreadableTable } from './fileLimits';
import { otherKind } from './otherKinds';
import { readCsvFile } from './readCsv';
import { readWorkbookFile } from './readWorkbookFile';
import type { Watch } from '../../workbook/watch';

const starts = (bytes: Uint8Array, ...with_: number[]) => with_.every((byte, index) => bytes[index] === byte);
const isArchive = (bytes: Uint8Array) => starts(bytes, 0x50, 0x4b, 3, 4) || starts(bytes, 0x50, 0x4b, 5, 6);
/** Compound files: workbooks of before 2007, and locked ones. */
const isCompound = (bytes: Uint8Array) => starts(bytes, 0xd0, 0xcf, 0x11, 0xe0);

/**
 * The tables of a parts file by sheet; that of a .csv under "". What the file is follows from its content, not from its name.
 * @throws UnreadableTable with a sentence where it cannot be read; Stopped where the user stops it
 */
export async function readPartsFile({ name, bytes }: PartsFile, watch: Watch = {}): Promise<ReadonlyMap<string, FileSheet>> {
  if (isArchive(bytes)) return readWorkbookFile(name, bytes, watch);
  if (isCompound(bytes)) {
    throw new UnreadableTable(`${name} is an old .xls workbook or has a password: save it as .xlsx without one, then load that`);
  }
  const kind = otherKind(bytes);
  if (kind) throw new UnreadableTable(`${name} is ${kind}: load an .xlsx workbook or a .csv table`);
  return new Map([['', await readCsvFile(name, bytes, watch)]]);
}
