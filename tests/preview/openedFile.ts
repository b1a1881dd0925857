import type { IWorkbookData } from '@univerjs/core';
import { readXlsx } from '../../src/preview/xlsx/readXlsx';

/** What was read from files, as text; the engine changes the data that it is given. */
const read = new Map<string, string>();

/** Data of an .xlsx file for the engine; bytes that came before are not read again. */
export async function openedFile(bytes: Uint8Array, name?: string): Promise<IWorkbookData> {
  const key = Buffer.from(bytes).toString('latin1');
  if (!read.has(key)) read.set(key, JSON.stringify((await readXlsx(bytes, name)).data));
  return JSON.parse(read.get(key)!) as IWorkbookData;
}
