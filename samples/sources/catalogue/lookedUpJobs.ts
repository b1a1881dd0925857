import type { Workbook } from 'exceljs';
import { at, call, named } from '../book/call';
import { colourVerdicts, dressRows, putHeadings, putSetting, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';

const HEADING_ROW = 9;
/** Rows below the jobs that are ready for the next one. */
const FREE_ROWS = 3;
export const HANDLE = 'B5';
/** Tables in the order CATALOGUE takes them. */
const TABLES = ['Hoses', 'Fittings', 'Crimps', 'Machines', 'Rates', 'Dies', 'Guards', 'Derating', 'Fluids'];
/** Rows below a table that are part of its range already, so that a part can be added. */
const SPARE_ROWS = 20;

/** A job line: hose, couplings, overall length in mm, quantity, machine. */
type Job = readonly [hose: string, couplingA: string, couplingB: string, overall: number, quantity: number, machine: string];

const jobs: readonly Job[] = [
  ['Alder DN 6', 'Alder 37° flare swivel straight DN 6', 'Alder 37° flare swivel straight DN 6', 620, 4, 'Machine at the gate'],
  ['Alder DN 16', 'Alder 24° cone L 45° DN 16', 'Alder 24° cone L straight DN 16', 1120, 2, 'Machine at the gate'],
  ['Larch DN 10', 'Larch 24° cone L 90° DN 10', 'Larch 24° cone L straight DN 10', 985, 2, 'Machine at the gate'],
  ['Larch DN 16', 'Larch 24° cone L straight DN 16', 'Larch 24° cone L straight DN 16', 1480, 10, 'Machine in the van'],
  ['Larch DN 19', 'Larch O-ring face seal 90° DN 19', 'Larch O-ring face seal 90° DN 19', 860, 2, 'Machine at the gate'],
  ['Rowan DN 19', 'Rowan 24° cone S straight DN 19', 'Rowan 24° cone S straight DN 19', 3400, 1, 'Machine at the gate'],
  ['Larch DN 12', 'Larch 24° cone S straight DN 12', 'Larch 24° cone S straight DN 12', 200, 2, 'Machine at the gate'],
  ['Larch DN 19', 'Larch 37° flare swivel 90° DN 19', 'Larch 24° cone L straight DN 19', 740, 2, 'Machine at the gate'],
  ['Larch DN 16', 'Rowan 24° cone S straight DN 19', 'Larch 24° cone L straight DN 16', 900, 1, 'Machine at the gate'],
];

const number = (heading: string, format: string, width = 11): SheetColumn => ({
  heading,
  width,
  format,
  align: 'right',
  kind: 'computed',
});

const columns: readonly SheetColumn[] = [
  { heading: 'Hose', width: 15 },
  { heading: 'Coupling A', width: 36 },
  { heading: 'Coupling B', width: 36 },
  { heading: 'Overall length (mm)', width: 12, format: '0.0', align: 'right' },
  { heading: 'Quantity', width: 10, format: '0', align: 'right' },
  { heading: 'Machine', width: 20 },
  number('Cut length (mm)', '0.0'),
  number('Working pressure (bar)', '0'),
  number('Mass (kg)', '0.00'),
  { heading: 'Assembly', width: 44, kind: 'computed' },
  { heading: 'Die', width: 8, align: 'center', kind: 'computed' },
  number('Dial (digits)', '0', 9),
  number('Crimp diameter (mm)', '0.00', 12),
  number('Tolerance ± (mm)', '0.00', 12),
  number('Insertion depth (mm)', '0.0', 12),
  { heading: 'Dial from', width: 13, kind: 'computed' },
  number('Hose, each', '0.00'),
  number('Couplings, each', '0.00', 12),
  number('Labour, each', '0.00'),
  number('Cost, each', '0.00'),
  number('Price, each', '0.00'),
];

/** Puts the handle of the tables into the cell named Catalogue; the tables must stand in the book. */
export async function putHandle(book: Workbook): Promise<void> {
  const sheet = book.getWorksheet('Catalogue')!;
  const tables = TABLES.map(name => {
    const { rowCount, columnCount } = book.getWorksheet(name)!;
    return at(`A1:${sheet.getColumn(columnCount).letter}${rowCount + SPARE_ROWS}`, name);
  });
  sheet.getCell('A5').value = 'This catalogue';
  sheet.getCell('A5').font = { bold: true };
  await putFormula(sheet, HANDLE, call('CATALOGUE', ...tables));
  sheet.getCell('A6').value =
    'The cell above is named Catalogue; every look-up takes it first. It changes when a table changes, and everything looked up follows.';
  book.definedNames.add(`Catalogue!$B$5`, 'Catalogue');
}

/** Adds job lines for which a hose and two couplings are enough: the rest is looked up. */
export async function addLookedUpJobs(book: Workbook): Promise<void> {
  const sheet = book.addWorksheet('Jobs');
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'Job lines: a hose and two couplings are enough',
    'The shaded columns are looked up in the catalogue of this workbook: lengths, set-up of end A, cost and price.',
    `${INVENTED}. Where there is no crimp data for a hose and a coupling, do not assemble.`,
  );
  putSetting(sheet, 'A5', 'Margin', 0.4, '0%');
  putSetting(sheet, 'A6', 'Round up to', 0.5, '0.00');
  putSetting(sheet, 'A7', 'At least', 20, '0.00');
  putHeadings(sheet, HEADING_ROW, columns);
  const last = HEADING_ROW + jobs.length + FREE_ROWS;
  dressRows(sheet, HEADING_ROW + 1, last, columns);
  for (let row = HEADING_ROW + 1; row <= last; row++) {
    jobs[row - HEADING_ROW - 1]?.forEach((value, column) => (sheet.getCell(row, column + 1).value = value));
    const [hose, a, b, overall, quantity, machine] = ['A', 'B', 'C', 'D', 'E', 'F'].map(column => at(`${column}${row}`));
    await putFormula(sheet, `G${row}`, call('ASSEMBLY', catalogue, hose, a, b, overall));
    await putFormula(sheet, `K${row}`, call('CRIMPSETUP', catalogue, hose, a, machine));
    await putFormula(sheet, `Q${row}`, call('UNITCOST', catalogue, hose, a, b, overall, quantity));
    await putFormula(sheet, `U${row}`, call('SELLPRICE', at(`T${row}`), at('$B$5'), at('$B$6'), at('$B$7')));
  }
  colourVerdicts(sheet, `J${HEADING_ROW + 1}:J${last}`);
  setUpSheet(sheet, HEADING_ROW, 1);
}
