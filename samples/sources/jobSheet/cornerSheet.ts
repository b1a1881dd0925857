import type { Workbook, Worksheet } from 'exceljs';
import { at, call, type Call } from '../book/call';
import { dressRows, putHeadings, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { machine } from './crimps';

const columns: readonly SheetColumn[] = [
  { heading: 'What', width: 52 },
  { heading: 'Value', width: 14, align: 'right' },
  { heading: 'and', width: 14, align: 'right' },
  { heading: 'Unit', width: 10 },
];

function putTyped(sheet: Worksheet, row: number, what: string, value: number, unit: string): void {
  sheet.getCell(row, 1).value = what;
  sheet.getCell(row, 2).value = value;
  sheet.getCell(row, 4).value = unit;
}

async function putAsked(sheet: Worksheet, row: number, what: string, unit: string, asked: Call): Promise<void> {
  sheet.getCell(row, 1).value = what;
  sheet.getCell(row, 4).value = unit;
  await putFormula(sheet, `B${row}`, asked);
}

const formatted = (format: string, kind?: 'computed') =>
  columns.map(column => (column.align ? { ...column, format, ...(kind && { kind }) } : column));

async function putRoute(sheet: Worksheet): Promise<void> {
  putHeadings(sheet, 5, columns);
  dressRows(sheet, 6, 10, formatted('0.0'));
  putTyped(sheet, 6, 'Straight run at the first coupling', 120, 'mm');
  putTyped(sheet, 7, 'Straight run at the second coupling', 160, 'mm');
  putTyped(sheet, 8, 'Bend radius, inside of the bend', 180, 'mm');
  putTyped(sheet, 9, 'Bend angle', 135, 'degrees');
  putTyped(sheet, 10, 'Outside diameter of the hose', 23.5, 'mm');
  dressRows(sheet, 11, 12, formatted('0.0', 'computed'));
  await putAsked(sheet, 11, 'Hose along the route', 'mm', call('ROUTELENGTH', at('B6:B7'), at('B8'), at('B9'), at('B10')));
  await putAsked(sheet, 12, 'That hose under pressure: shortest and longest', 'mm', call('LENGTHCHANGE', at('B11')));
}

async function putMachine(sheet: Worksheet): Promise<void> {
  putHeadings(sheet, 15, columns);
  dressRows(sheet, 16, 21, formatted('0.000'));
  putTyped(sheet, 16, `${machine.name}: deviation of all combinations`, 0.11, 'mm');
  putTyped(sheet, 17, 'Change in one turn of its calibration screw', machine.perTurn, 'mm');
  putTyped(sheet, 18, 'Mean of a crimp', 27.42, 'mm');
  putTyped(sheet, 19, 'Its target', 27.35, 'mm');
  putTyped(sheet, 20, 'Its tolerance, either way', 0.12, 'mm');
  putTyped(sheet, 21, 'Expanded uncertainty of the mean (k = 2)', 0.04, 'mm');
  dressRows(sheet, 22, 23, formatted('0.0000', 'computed'));
  await putAsked(sheet, 22, 'Turns of the screw, positive = tighter', 'turns', call('CALIBRATIONTURNS', at('B16'), at('B17')));
  await putAsked(
    sheet,
    23,
    'Probability that the crimp is in spec',
    '',
    call('CONFORMITY', at('B18'), at('B19'), at('B20'), at('B21')),
  );
  sheet.getCell('A25').value =
    'Turn the screw only when every combination is off by the same amount; then crimp a trial piece, measure, and check again.';
}

/** Adds a small sheet of single questions: a route, its hose under pressure, a machine that is off, and how sure a verdict is. */
export async function addCorner(book: Workbook): Promise<void> {
  const sheet = book.addWorksheet('Route and machine');
  setWidths(sheet, columns);
  putTitle(sheet, 'A route, and a machine that is off', 'Change a value in column B; the shaded cells follow.', `${INVENTED}.`);
  await putRoute(sheet);
  await putMachine(sheet);
  sheet.views = [{ showGridLines: false }];
}
