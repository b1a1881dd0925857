import type { Readable } from 'node:stream';
import { Workbook } from 'exceljs';

/** Reads a downloaded .xlsx with an independent reader. */
export async function readXlsx(stream: Readable): Promise<Workbook> {
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(chunk as Buffer);
  const book = new Workbook();
  const bytes = Buffer.concat(chunks);
  await book.xlsx.load(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer);
  return book;
}
