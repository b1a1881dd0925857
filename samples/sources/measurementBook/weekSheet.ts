import type { Workbook, Worksheet } from 'exceljs';
import { at, call } from '../book/call';
import {
  colourVerdicts,
  dressHeadings,
  dressRows,
  putHeadings,
  putSetting,
  putTitle,
  setWidths,
  type SheetColumn,
} from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { measuredCrimps, type MeasuredCrimp } from './measuredCrimps';
import { TOLERANCE, type Week } from './weeks';

const HEADING_ROW = 7;
/** Where the finding stands, one column off the readings. */
const FINDING_COLUMN = 16;

const reading = { width: 10, format: '0.00', align: 'right' } as const;
const result = { width: 11, format: '0.000', align: 'right', kind: 'computed' } as const;
const deviation = { ...result, format: '+0.000;-0.000;0.000' } as const;

const columns: readonly SheetColumn[] = [
  { heading: 'Date', width: 12, format: 'dd/mm/yyyy', align: 'center' },
  { heading: 'Combination', width: 32 },
  { heading: 'End', width: 6, align: 'center' },
  { heading: 'Die', width: 7, align: 'center' },
  { heading: 'Dial (digits)', width: 8, format: '0', align: 'right' },
  { heading: 'Reading 1 (mm)', ...reading },
  { heading: 'Reading 2 (mm)', ...reading },
  { heading: 'Reading 3 (mm)', ...reading },
  { heading: 'Reading 4 (mm)', ...reading },
  { heading: 'Target (mm)', ...reading },
  { heading: 'Mean (mm)', ...result },
  { heading: 'Deviation (mm)', ...deviation },
  { heading: 'Spread (mm)', ...result, format: '0.00' },
  { heading: 'Verdict', width: 12, align: 'center', kind: 'computed' },
  { heading: '', width: 4 },
  { heading: 'Combination', width: 32, kind: 'computed' },
  { heading: 'Crimps', ...result, width: 9, format: '0' },
  { heading: 'Mean deviation', ...deviation },
  { heading: 'Correction', ...deviation },
  { heading: 'Finding', width: 22, kind: 'computed' },
  { heading: 'Since', width: 12, format: 'dd/mm/yyyy', align: 'center', kind: 'computed' },
  { heading: 'Low', ...deviation },
  { heading: 'High', ...deviation },
];
const readingColumns = columns.slice(0, FINDING_COLUMN - 2);
const findingColumns = columns.slice(FINDING_COLUMN - 1);

async function putCrimp(sheet: Worksheet, row: number, crimp: MeasuredCrimp): Promise<void> {
  const { date, combination, end, die, dial, readings, target } = crimp;
  [date, combination, end, die, dial, ...readings, target].forEach((value, index) => {
    sheet.getCell(row, index + 1).value = value;
  });
  await putFormula(sheet, `K${row}`, call('CRIMPDETAIL', at(`F${row}:I${row}`), at(`J${row}`), at('$C$5')));
}

/** Adds one week of the measurement book: its crimps, their verdicts, and whether the machine or a setting is off. */
export async function addWeek(book: Workbook, week: Week): Promise<void> {
  const sheet = book.addWorksheet(week.sheet);
  const crimps = measuredCrimps(week);
  const [first, last] = [HEADING_ROW + 1, HEADING_ROW + crimps.length];
  setWidths(sheet, columns);
  putTitle(
    sheet,
    `Measurement book, ${week.sheet.toLowerCase()} of 2026`,
    'Four readings a crimp; beside them, whether single recorded dials are off or the whole machine. Too few data are called too few.',
    `${INVENTED}. A corrected dial or a turned screw is tried on one trial piece; rejected crimps stay rejected.`,
  );
  putSetting(sheet, 'B5', 'Tolerance, either way (mm)', TOLERANCE, '0.00');
  putHeadings(sheet, HEADING_ROW, readingColumns);
  dressRows(sheet, first, last, readingColumns);
  for (const [index, crimp] of crimps.entries()) await putCrimp(sheet, first + index, crimp);

  // Most dies are crimped with one combination only: with the dies given, a wrong dial could not be told from a worn die.
  const combined = [at(`$B$${first}:$B$${last}`), at(`$L$${first}:$L$${last}`), at('$C$5'), undefined, undefined, undefined];
  const found = await putFormula(sheet, `P${HEADING_ROW}`, call('CRIMPCAUSE', ...combined, at(`$A$${first}:$A$${last}`)));
  dressRows(sheet, first, HEADING_ROW + found.length - 1, findingColumns, FINDING_COLUMN);
  dressHeadings(sheet, HEADING_ROW, findingColumns, FINDING_COLUMN);
  colourVerdicts(sheet, `N${first}:N${last}`);
  setUpSheet(sheet, HEADING_ROW, 2);
}
