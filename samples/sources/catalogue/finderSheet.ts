import type { Workbook } from 'exceljs';
import { at, call, named } from '../book/call';
import { dressHeadings, dressRows, putSetting, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from './lookedUpJobs';

const TABLE_ROW = 12;
/** First column of the couplings found. */
const COUPLINGS = 8;

const text = (heading: string, width: number): SheetColumn => ({ heading, width, kind: 'computed' });
const number = (heading: string, format: string): SheetColumn => ({
  heading,
  width: 13,
  format,
  align: 'right',
  kind: 'computed',
});

const hoseColumns: readonly SheetColumn[] = [
  text('Hose', 34),
  text('Standard', 16),
  number('Working pressure', '0'),
  number('Bend radius', '0'),
  number('Price', '0.00'),
  number('Margin of pressure', '0'),
];
const couplingColumns: readonly SheetColumn[] = [
  text('Fitting', 34),
  text('End form', 20),
  text('Thread', 16),
  number('Angle', '0'),
  number('Price', '0.00'),
];

/** Adds two questions to the catalogue: which hoses suit a duty, and which couplings there are for a hose. */
export async function addFinder(book: Workbook): Promise<void> {
  const sheet = book.addWorksheet('Find');
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  setWidths(sheet, [...hoseColumns, { heading: '', width: 4 }, ...couplingColumns]);
  putTitle(
    sheet,
    'Which hose for the duty, which couplings for the hose',
    'Change the values beside the bold words; the tables below follow, cheapest hose first. Units as in the catalogue: mm, bar, °C.',
    `${INVENTED}. Choose by the makers’ current data; pressure peaks count.`,
  );
  putSetting(sheet, 'A5', 'Bore, at least (mm)', 12, '0.0');
  putSetting(sheet, 'A6', 'Pressure, peaks included (bar)', 200, '0');
  putSetting(sheet, 'A7', 'Tightest bend of the route (mm)', 250, '0');
  putSetting(sheet, 'A8', 'Coldest (°C)', -20, '0');
  putSetting(sheet, 'A9', 'Hottest (°C)', 80, '0');
  putSetting(sheet, 'A10', 'Fluid', 'mineral oil');
  putSetting(sheet, 'H5', 'Hose', 'Larch DN 16');
  putSetting(sheet, 'H6', 'End form', '24° cone');

  const duty = ['B5', 'B6', 'B7', 'B8', 'B9', 'B10'].map(address => at(address));
  const hoses = await putFormula(sheet, `A${TABLE_ROW}`, call('FINDHOSE', catalogue, ...duty));
  const couplings = await putFormula(sheet, `H${TABLE_ROW}`, call('FINDFITTING', catalogue, at('I5'), at('I6')));
  dressRows(sheet, TABLE_ROW + 1, TABLE_ROW + hoses.length - 1, hoseColumns);
  dressRows(sheet, TABLE_ROW + 1, TABLE_ROW + couplings.length - 1, couplingColumns, COUPLINGS);
  dressHeadings(sheet, TABLE_ROW, hoseColumns);
  dressHeadings(sheet, TABLE_ROW, couplingColumns, COUPLINGS);
  setUpSheet(sheet, TABLE_ROW, 1);
}
