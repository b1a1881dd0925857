import type { Workbook, Worksheet } from 'exceljs';
import { dressRows, putHeadings, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { catalogueTables } from './catalogueTables';
import type { SampleTable, TableCell } from './sampleTable';

const DATE = 'dd/mm/yyyy';
const NOTE_WIDTH = 60;

function columnOf(heading: string, cells: readonly TableCell[]): SheetColumn {
  const isNumber = cells.every(cell => cell === undefined || typeof cell === 'number');
  const isDate = cells.some(cell => cell instanceof Date);
  const longest = Math.max(...cells.map(cell => (isDate ? DATE.length : String(cell ?? '').length)));
  const longestWord = Math.max(...heading.split(' ').map(word => word.length));
  const width = Math.min(NOTE_WIDTH, Math.max(longest, longestWord, 6) + 3);
  return { heading, width, align: isNumber ? 'right' : 'left', ...(isDate && { format: DATE }) };
}

function addTable(book: Workbook, { name, headings, rows }: SampleTable): void {
  const sheet = book.addWorksheet(name);
  const columns = headings.map((heading, index) =>
    columnOf(
      heading,
      rows.map(row => row[index]),
    ),
  );
  setWidths(sheet, columns);
  putHeadings(sheet, 1, columns);
  rows.forEach((cells, down) => {
    cells.forEach((value, across) => {
      if (value !== undefined) sheet.getCell(down + 2, across + 1).value = value;
    });
  });
  dressRows(sheet, 2, rows.length + 1, columns);
  sheet.autoFilter = { from: { row: 1, column: 1 }, to: { row: rows.length + 1, column: headings.length } };
  setUpSheet(sheet, 1, 1);
}

/** Adds the tables of the catalogue, a sheet each, headings in the first row. */
export function addCatalogueTables(book: Workbook): void {
  for (const table of catalogueTables) addTable(book, table);
}

/** Adds the sheet that says what catalogue this is. */
export function addCatalogueFront(book: Workbook): Worksheet {
  const sheet = book.addWorksheet('Catalogue');
  putTitle(
    sheet,
    'Catalogue of the workshop: hoses, couplings, crimps, machines, rates',
    'One sheet a table; the first row says what a column holds, and in which unit. Correct a value in its sheet and everything that was looked up follows.',
    `${INVENTED}. Values of standards are recalled from memory and can be corrected; crimp diameters, dials, cut-offs and prices are invented.`,
  );
  sheet.getColumn(1).width = 34;
  sheet.getColumn(2).width = 90;
  sheet.views = [{ showGridLines: false }];
  return sheet;
}
