import ExcelJS, { type Workbook } from 'exceljs';
import { markDynamicArrays } from '../../../src/preview/xlsx/dynamicArrays';

/** Samples are dated, so that the same sources give the same bytes. */
const MADE_ON = new Date(Date.UTC(2026, 8, 1, 6));

/** An empty workbook with fixed dates. */
export function sampleBook(title: string): Workbook {
  const book = new ExcelJS.Workbook();
  book.creator = 'Benchrow samples';
  book.lastModifiedBy = book.creator;
  book.created = MADE_ON;
  book.modified = MADE_ON;
  book.title = title;
  book.subject = 'Invented data: never crimp from these';
  return book;
}

/** The workbook as an .xlsx file. */
export async function bookBytes(book: Workbook): Promise<Uint8Array> {
  return markDynamicArrays(new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer));
}
