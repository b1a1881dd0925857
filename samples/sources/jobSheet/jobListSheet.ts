import type { Workbook } from 'exceljs';
import { at, call } from '../book/call';
import { dressRows, putHeadings, putTitle, setWidths, type SheetColumn } from '../book/looks';
import { INVENTED, setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import type { Job } from './metricJobs';

const HEADING_ROW = 5;
/** Rows below the jobs that are ready for the next one. */
const FREE_ROWS = 3;

/** How a job list writes its lengths. */
interface ListUnit {
  readonly unit: 'mm' | 'in';
  /** Format of typed lengths. */
  readonly typed: string;
  /** Format of computed lengths. */
  readonly computed: string;
}

const UNITS = {
  mm: { unit: 'mm', typed: '0.0##', computed: '0.0' },
  in: { unit: 'in', typed: '@', computed: '# ??/??' },
} as const satisfies Record<string, ListUnit>;

function columnsOf({ unit, typed, computed }: ListUnit): SheetColumn[] {
  const length = { width: 11, format: typed, align: 'right' } as const;
  const result = { width: 11, format: computed, align: 'right', kind: 'computed' } as const;
  return [
    { heading: 'Line', width: 6, align: 'center' },
    { heading: 'Wanted for', width: 34 },
    { heading: 'Hose', width: 15 },
    { heading: `Bore (${unit})`, ...length, width: 9 },
    { heading: 'Coupling A', width: 25 },
    { heading: 'Coupling B', width: 25 },
    { heading: 'Quantity', width: 9, align: 'right', format: '0' },
    { heading: `Overall length (${unit})`, ...length, width: 14 },
    { heading: `Cut-off A (${unit})`, ...length },
    { heading: `Cut-off B (${unit})`, ...length },
    { heading: `Allowance (${unit})`, ...length },
    { heading: `Cut length (${unit})`, ...result },
    { heading: `Shortest (${unit})`, ...result },
    { heading: `Longest (${unit})`, ...result },
    { heading: 'Due', width: 12, format: 'dd/mm/yyyy', align: 'center' },
    { heading: 'Note', width: 44 },
  ];
}

function typedCells(job: Job, line: number): (string | number | Date | undefined)[] {
  const due = new Date(Date.UTC(2026, 9, job.due));
  return [
    line,
    job.wantedFor,
    job.hose,
    job.bore,
    job.couplingA,
    job.couplingB,
    job.quantity,
    job.overall,
    job.cutOffA,
    job.cutOffB,
    job.allowance,
    undefined,
    undefined,
    undefined,
    due,
    job.note,
  ];
}

/** Adds a sheet with jobs: what is wanted, and beside it cut length and length limits, a formula a row. */
export async function addJobList(
  book: Workbook,
  name: string,
  unit: 'mm' | 'in',
  jobs: readonly Job[],
  firstLine: number,
): Promise<void> {
  const sheet = book.addWorksheet(name);
  const columns = columnsOf(UNITS[unit]);
  const last = HEADING_ROW + jobs.length + FREE_ROWS;
  setWidths(sheet, columns);
  putTitle(
    sheet,
    `Hose jobs, beet harvest 2026, week 41 (${unit === 'mm' ? 'millimetres' : 'inches'})`,
    'Overall length, cut-offs and allowance are typed; the shaded columns are formulas. Measure a cut-off from the hose’s cut end to the point the overall length is measured to.',
    `${INVENTED}. Cut-offs come from the maker’s current data or from measuring the coupling in your hand.`,
  );
  putHeadings(sheet, HEADING_ROW, columns);
  dressRows(sheet, HEADING_ROW + 1, last, columns);
  for (let row = HEADING_ROW + 1; row <= last; row++) {
    const job = jobs[row - HEADING_ROW - 1];
    if (job) {
      typedCells(job, firstLine + row - HEADING_ROW - 1).forEach((value, index) => {
        if (value !== undefined) sheet.getCell(row, index + 1).value = value;
      });
    }
    await putFormula(sheet, `L${row}`, call('CUTLENGTH', at(`H${row}`), at(`I${row}`), at(`J${row}`), at(`K${row}`)));
    await putFormula(sheet, `M${row}`, call('LENGTHLIMITS', at(`H${row}`), at(`D${row}`), unit));
  }
  setUpSheet(sheet, HEADING_ROW, 2);
}
