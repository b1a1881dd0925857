import type { Workbook, Worksheet } from 'exceljs';
import { at, call } from '../book/call';
import { colourVerdicts, dressRows, putHeadings, putSetting, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { crimps, LARGEST_SPREAD, machine, type Crimp } from './crimps';

const HEADING_ROW = 11;
/** Rows below the crimps that are ready for the next one. */
const FREE_ROWS = 4;

const reading = { width: 10, format: '0.00', align: 'right' } as const;
const result = { width: 11, format: '0.000', align: 'right', kind: 'computed' } as const;

const columns: readonly SheetColumn[] = [
  { heading: 'Line', width: 6, align: 'center' },
  { heading: 'Hose', width: 16 },
  { heading: 'Coupling', width: 26 },
  { heading: 'End', width: 8, align: 'center' },
  { heading: 'Die', width: 7, align: 'center' },
  { heading: 'Dial (digits)', width: 8, format: '0', align: 'right' },
  { heading: 'Reading 1 (mm)', ...reading },
  { heading: 'Reading 2 (mm)', ...reading },
  { heading: 'Reading 3 (mm)', ...reading },
  { heading: 'Reading 4 (mm)', ...reading },
  { heading: 'Target (mm)', ...reading },
  { heading: 'Tolerance ± (mm)', ...reading },
  { heading: 'Mean (mm)', ...result },
  { heading: 'Deviation (mm)', ...result, format: '+0.000;-0.000;0.000' },
  { heading: 'Spread (mm)', ...result, format: '0.00' },
  { heading: 'Verdict', width: 12, align: 'center', kind: 'computed' },
  { heading: 'Next dial (digits)', width: 10, format: '0', align: 'right', kind: 'computed' },
  { heading: 'Note', width: 44 },
];

function putTyped(sheet: Worksheet, row: number, crimp: Crimp): void {
  const { line, hose, coupling, end, die, dial, readings, target, tolerance, note } = crimp;
  const four = Array.from({ length: 4 }, (_, index) => readings[index]);
  [line, hose, coupling, end, die, dial, ...four, target, tolerance].forEach((value, index) => {
    if (value !== undefined) sheet.getCell(row, index + 1).value = value;
  });
  if (note) sheet.getCell(row, columns.length).value = note;
}

function putSettings(sheet: Worksheet): void {
  sheet.getCell('A5').value = machine.name;
  putSetting(sheet, 'C5', 'Change per digit (mm)', machine.step, '0.000');
  putSetting(sheet, 'C6', 'Lowest dial (digits)', machine.lowest, '0');
  putSetting(sheet, 'C7', 'Highest dial (digits)', machine.highest, '0');
  putSetting(sheet, 'C8', 'Largest move (digits)', machine.largestMove, '0');
  putSetting(sheet, 'C9', 'Largest spread (mm)', LARGEST_SPREAD, '0.00');
}

/** Adds the bench record: four caliper readings a crimp, verdict and next dial beside them, a formula a row. */
export async function addBenchRecord(book: Workbook): Promise<void> {
  const sheet = book.addWorksheet('Bench record');
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'Bench record, week 41: four readings a crimp',
    'Readings across flats at mid crimp length, between the die ridges, 45° apart. The next dial is for the next crimp: try it on one trial piece; a rejected crimp stays rejected.',
    `${INVENTED}. Crimp diameters, tolerances and dials come from the makers’ current data.`,
  );
  putSettings(sheet);
  putHeadings(sheet, HEADING_ROW, columns);
  const last = HEADING_ROW + crimps.length + FREE_ROWS;
  dressRows(sheet, HEADING_ROW + 1, last, columns);
  for (let row = HEADING_ROW + 1; row <= last; row++) {
    const crimp = crimps[row - HEADING_ROW - 1];
    if (crimp) putTyped(sheet, row, crimp);
    const [readings, target, tolerance] = [at(`G${row}:J${row}`), at(`K${row}`), at(`L${row}`)];
    const limits = [at('$D$6'), at('$D$7'), at('$D$8')];
    await putFormula(sheet, `M${row}`, call('CRIMPDETAIL', readings, target, tolerance, at('$D$9')));
    await putFormula(sheet, `Q${row}`, call('NEXTDIAL', at(`F${row}`), readings, target, tolerance, at('$D$5'), ...limits));
  }
  colourVerdicts(sheet, `P${HEADING_ROW + 1}:P${last}`);
  setUpSheet(sheet, HEADING_ROW, 2);
}
