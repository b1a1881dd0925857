import type { Workbook } from './workbook';

/** Where a sheet in use has something: asked for first, so that a large workbook is not read to its end. */
const BEGINNING = 'A1:Z50';

/** Whether no sheet of the workbook holds anything. */
export async function isBlankWorkbook(workbook: Pick<Workbook, 'sheets' | 'read' | 'used'>): Promise<boolean> {
  const sheets = await workbook.sheets();
  const beginnings = await workbook.read(sheets.map(sheet => ({ sheet, address: BEGINNING })));
  if (beginnings.some(({ values }) => values.some(row => row.some(value => value !== '')))) return false;
  for (const sheet of sheets) {
    const used = await workbook.used(sheet);
    if (used?.values.some(row => row.some(value => value !== ''))) return false;
  }
  return true;
}
