import type { LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { readOptionsOf, type CrimpFields } from '../crimps/crimpFields';
import { readCrimpRows } from '../crimps/readCrimpRows';
import { NoJobs, readJobs, type Jobs, type JobWishes } from '../jobs/readJobs';
import type { JobChoice } from '../jobs/jobChoice';
import { jobsOfPieces } from '../pieces/jobsOfPieces';
import { benchStep } from '../table/benchStep';
import type { Takeable } from '../table/tableRows';
import type { RecordFields } from './inspectionRecord';

/** What the user says about where things are. */
export interface RecordWishes {
  readonly fields: RecordFields;
  /** What counts where neither the sheet nor the catalogue says anything of a crimp: as in analysis and entry. */
  readonly crimps: CrimpFields;
  /** Sheet with the half that the selected one lacks: job lines or readings; "" = none. */
  readonly otherSheet: string;
  readonly pressureUnit: string;
  /** What the bench can cut, as said with the cut list: records round as cards and cut lists do. */
  readonly bench: { readonly unit: LengthUnit; readonly step: string };
  /** Rows of other tables on the sheet are taken, too. */
  readonly take?: ReadonlySet<Takeable> | undefined;
  /** How job lines are read. */
  readonly jobs?: JobTicks | undefined;
  /** Day of the record, as `2026-10-05`: today where left out. */
  readonly today?: string | undefined;
}

type JobTicks = Pick<JobWishes, 'take' | 'plainEnds'>;

/** Records read every row, hidden ones too. */
export const ALL_LINES: JobTicks = { take: new Set(['hidden', 'below']) };

const firstCell = (sheet: string) => ({ sheet, block: { row: 0, column: 0, rows: 1, columns: 1 } });

/** The crimps of a sheet; undefined where it has no readings. */
export async function readingsOf(workbook: Workbook, sheet: string, isOther: boolean, wishes: RecordWishes) {
  const options = readOptionsOf({ ...wishes.crimps, machine: wishes.fields.machine || wishes.crimps.machine }, wishes.take);
  const reading = await readCrimpRows(workbook, options, isOther ? firstCell(sheet) : undefined);
  return reading && reading.rows.length > 0 ? reading : undefined;
}

/** The job lines of a sheet, whatever their status, hidden ones too; undefined where it has none. */
export async function jobsOf(
  workbook: Workbook,
  choice: JobChoice,
  { bench, pressureUnit, jobs = ALL_LINES }: RecordWishes,
): Promise<Jobs | undefined> {
  const step = { value: benchStep(bench, bench.unit), unit: measureUnit('length', bench.unit)! };
  const unit = measureUnit('pressure', pressureUnit);
  try {
    return await readJobs(workbook, { step, pressureUnit: unit, ...jobs, whateverStatus: true }, choice);
  } catch (error) {
    if (error instanceof NoJobs) return undefined;
    throw error;
  }
}

/** Job lines of the readings' own sheet, of the other one, or of the sheets that the pieces were planned from. */
export async function jobsFor(workbook: Workbook, choice: JobChoice, other: string, isPieces: boolean, wishes: RecordWishes) {
  const whole = { ...choice, isChoice: false };
  if (!isPieces) {
    const own = await jobsOf(workbook, whole, wishes);
    const elsewhere = !own && other ? await jobsOf(workbook, { ...firstCell(other), isChoice: false }, wishes) : undefined;
    return [own ?? elsewhere].filter(each => each !== undefined);
  }
  const named = other ? await jobsOf(workbook, { ...firstCell(other), isChoice: false }, wishes) : undefined;
  return named ? [named] : jobsOfPieces(workbook);
}
