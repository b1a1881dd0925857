import type { Workbook } from 'exceljs';
import { dressRows, putHeadings, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { rackRows } from './rackRows';

const HEADING_ROW = 5;

const columns: readonly SheetColumn[] = [
  { heading: 'Hose', width: 16 },
  { heading: 'Length (mm)', width: 12, format: '0', align: 'right' },
  { heading: 'Quantity', width: 10, format: '0', align: 'right' },
  { heading: 'Place', width: 10, align: 'center' },
  { heading: 'Lot', width: 10, align: 'center' },
  { heading: 'Made', width: 12, format: 'dd/mm/yyyy', align: 'center' },
];

/** Adds the rack: what hose there is, where it hangs, and how old it is. */
export function addRack(book: Workbook): void {
  const sheet = book.addWorksheet('Rack');
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'Rack: reels and ends that can be cut from',
    'One row for each length of hose; ends that came back from the bench too. The cut list is planned from these.',
    `${INVENTED}.`,
  );
  putHeadings(sheet, HEADING_ROW, columns);
  dressRows(sheet, HEADING_ROW + 1, HEADING_ROW + rackRows.length, columns);
  rackRows.forEach(([hose, lengthMm, quantity, place, lot, [year, month]], index) => {
    const made = new Date(Date.UTC(year, month - 1, 1));
    [hose, lengthMm, quantity, place, lot, made].forEach((value, column) => {
      sheet.getCell(HEADING_ROW + 1 + index, column + 1).value = value;
    });
  });
  setUpSheet(sheet, HEADING_ROW, 1);
}
