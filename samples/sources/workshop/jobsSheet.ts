import type { Worksheet } from 'exceljs';
import { at, call, named } from '../book/call';
import {
  colourStops,
  colourVerdicts,
  dressRows,
  putHeadings,
  putSetting,
  putTitle,
  setWidths,
  type SheetColumn,
} from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from '../catalogue/lookedUpJobs';
import { weekJobs, type WeekJob } from './weekJobs';

export const JOBS = 'This week';
const HEADING_ROW = 9;
/** Rows below the jobs that are ready for the next one. */
const FREE_ROWS = 4;

const typed = (heading: string, format: string, width = 10): SheetColumn => ({ heading, width, format, align: 'right' });
const computed = (heading: string, format: string, width = 11): SheetColumn => ({
  ...typed(heading, format, width),
  kind: 'computed',
});

const columns: readonly SheetColumn[] = [
  { heading: 'Line', width: 5, align: 'center' },
  { heading: 'Wanted for', width: 29 },
  { heading: 'Hose', width: 20 },
  typed('Quantity', '0', 9),
  typed('Overall length (mm)', '0'),
  computed('Cut length (mm)', '0.0', 9),
  computed('Working pressure (bar)', '0', 10),
  computed('Mass (kg)', '0.00', 7),
  { heading: 'Check', width: 22, kind: 'computed' },
  computed('Price each', '0.00', 8),
  { heading: 'Coupling A', width: 33 },
  { heading: 'Coupling B', width: 33 },
  { heading: 'Status', width: 10, align: 'center' },
  { heading: 'Due', width: 12, format: 'dd/mm/yyyy', align: 'center' },
  typed('Hottest (°C)', '0'),
  { heading: 'Fluid', width: 12 },
  { heading: 'Crimper', width: 20 },
  { heading: 'Die A', width: 8, align: 'center', kind: 'computed' },
  computed('Dial A (digits)', '0', 9),
  computed('Crimp diameter A (mm)', '0.00', 12),
  computed('Tolerance A ± (mm)', '0.00', 12),
  computed('Insertion depth A (mm)', '0.0', 12),
  { heading: 'Dial A from', width: 13, kind: 'computed' },
  computed('Hose, each', '0.00'),
  computed('Couplings, each', '0.00', 12),
  computed('Labour, each', '0.00'),
  computed('Cost, each', '0.00'),
  { heading: 'Assembly no.', width: 12, align: 'center' },
  { heading: 'Note', width: 44 },
];

const place = (heading: string) => columns.findIndex(column => column.heading === heading) + 1;

function putTyped(sheet: Worksheet, row: number, job: WeekJob, line: number): void {
  const cells: Readonly<Record<string, string | number | Date | undefined>> = {
    Line: line,
    'Wanted for': job.wantedFor,
    Hose: job.hose,
    'Coupling A': job.couplingA,
    'Coupling B': job.couplingB,
    Quantity: job.quantity,
    'Overall length (mm)': job.overall,
    Status: job.status,
    Due: new Date(Date.UTC(2026, 9, job.due)),
    'Hottest (°C)': job.hottest,
    Fluid: job.fluid,
    Crimper: job.crimper,
    'Assembly no.': `W43-${String(line).padStart(2, '0')}`,
    Note: job.note,
  };
  for (const [heading, value] of Object.entries(cells)) {
    if (value !== undefined) sheet.getCell(row, place(heading)).value = value;
  }
  if (job.overall instanceof Date) sheet.getCell(row, place('Overall length (mm)')).numFmt = 'dd/mm/yyyy';
}

async function putLookUps(sheet: Worksheet, row: number, job: WeekJob | undefined): Promise<void> {
  const cell = (heading: string) => at(sheet.getCell(row, place(heading)).address);
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  const parts = [cell('Hose'), cell('Coupling A'), cell('Coupling B'), cell('Overall length (mm)')];
  const put = (heading: string, ...what: Parameters<typeof call>) =>
    putFormula(sheet, sheet.getCell(row, place(heading)).address, call(...what));
  if (job?.cutLength !== undefined) sheet.getCell(row, place('Cut length (mm)')).value = job.cutLength;
  else if (!job || job.couplingA) {
    await put('Cut length (mm)', 'ASSEMBLY', catalogue, ...parts, cell('Hottest (°C)'), cell('Fluid'));
  } else sheet.getCell(row, place('Cut length (mm)')).value = job.overall as number;
  if (job && !job.couplingA) return;
  await put('Die A', 'CRIMPSETUP', catalogue, parts[0], parts[1], cell('Crimper'));
  await put('Hose, each', 'UNITCOST', catalogue, ...parts, cell('Quantity'));
  await put('Price each', 'SELLPRICE', cell('Cost, each'), at('$C$5'), at('$C$6'));
}

/** Fills the job list of the week: what has to be made, looked up in this workbook's catalogue; and one line for each reason not to make it. */
export async function fillJobs(sheet: Worksheet): Promise<void> {
  setWidths(sheet, columns);
  putTitle(
    sheet,
    'This week in the workshop',
    'Change a length, a hose or a quantity: cut length, rating, check and price follow. Then open Week in the pane: order, cut list, cards.',
    `${INVENTED}. Where the check says anything but OK, do not assemble.`,
  );
  putSetting(sheet, 'B5', 'Margin', 0.4, '0%');
  putSetting(sheet, 'B6', 'Round prices up to', 0.5, '0.00');
  putHeadings(sheet, HEADING_ROW, columns);
  const last = HEADING_ROW + weekJobs.length + FREE_ROWS;
  dressRows(sheet, HEADING_ROW + 1, last, columns);
  for (let row = HEADING_ROW + 1; row <= last; row++) {
    const index = row - HEADING_ROW - 1;
    const job = weekJobs[index];
    if (job) putTyped(sheet, row, job, index + 1);
    await putLookUps(sheet, row, job);
  }
  const check = sheet.getColumn(place('Check')).letter;
  colourVerdicts(sheet, `${check}${HEADING_ROW + 1}:${check}${last}`);
  colourStops(sheet, `${check}${HEADING_ROW + 1}:${check}${last}`);
  setUpSheet(sheet, HEADING_ROW, 2);
  // What the strip of the pane explains first: the check of a line that must not be made.
  const stop = HEADING_ROW + 1 + weekJobs.findIndex(({ note }) => note === 'too short for its couplings');
  sheet.views = [{ ...sheet.views[0]!, activeCell: `${check}${stop}` } as (typeof sheet.views)[number]];
}
