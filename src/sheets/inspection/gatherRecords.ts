import { typedNumber } from '../../cells/typedNumber';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import type { CrimpReading } from '../crimps/readCrimpRows';
import { readGauges } from '../gauges/readGauges';
import type { BenchCard } from '../jobs/benchCard';
import { benchCardOf } from '../jobs/benchCards';
import type { Jobs } from '../jobs/readJobs';
import { jobChoice } from '../jobs/jobChoice';
import { readPieces } from '../pieces/readPieces';
import { benchStep } from '../table/benchStep';
import { today } from '../table/today';
import type { InspectionRecord, RecordUse } from './inspectionRecord';
import { instrumentsOf, usesOf } from './instruments';
import { recordGauges } from './recordGauges';
import { type RecordWishes, readingsOf, jobsOf, jobsFor } from './recordSources';
import type { RecordGround } from './recordOf';
import { recordsByLine } from './recordsByLine';

/** A reason that a sheet has nothing to record, ready to be shown. */
export class NothingToRecord extends Error {
  constructor(readonly sheet: string) {
    super(`Sheet ${sheet} has no lines to record here. Select rows with readings, or job lines with a hose and a length.`);
  }
}

/** Records of the chosen lines, and what they were read from. */
export interface GatheredRecords {
  readonly records: readonly InspectionRecord[];
  readonly handle: string;
  readonly source: string;
  /** Expanded uncertainty that the verdicts were made with: as the user says, else as stated above the readings; "" = none. */
  readonly uncertainty: string;
  /** The readings, where there are any. */
  readonly reading: CrimpReading | undefined;
  /** The job lines, where there are any. */
  readonly jobs: Jobs | undefined;
  /** Why no record must be made: a gauge that was overdue on the day of its use. */
  readonly refusals: readonly string[];
}

const typed = (text: string) => typedNumber(text, 'uncertainty U', { sign: 'positive' }).value;

function cardsOf(all: readonly Jobs[], { bench, fields }: RecordWishes): readonly BenchCard[] {
  const step = { value: benchStep(bench, bench.unit), unit: measureUnit('length', bench.unit)! };
  const options = { unit: bench.unit, step, machine: fields.machine };
  return all.flatMap(jobs => jobs.lines.map(line => benchCardOf(line, jobs, options)));
}

const isSameSheet = (one: string, other: string | undefined) => one.toLowerCase() === other?.toLowerCase();

/**
 * Reads the records of the selected lines: readings and job data from the selected table, and from another sheet what it lacks. Of job
 * lines without readings the sheet Pieces has them.
 * @throws NothingToRecord where the sheet holds neither readings nor job lines
 */
export async function gatherRecords(workbook: Workbook, wishes: RecordWishes): Promise<GatheredRecords> {
  const choice = await jobChoice(workbook);
  const { sheet } = choice;
  const [sheets, pieces, gauges] = await Promise.all([workbook.sheets(), readPieces(workbook), readGauges(workbook)]);
  const named = wishes.otherSheet !== sheet && sheets.includes(wishes.otherSheet) ? wishes.otherSheet : '';
  const isPieces = isSameSheet(sheet, pieces?.sheet);
  const here = await readingsOf(workbook, sheet, false, wishes);
  const other = named || (here ? '' : (pieces?.sheet ?? ''));
  const reading = here ?? (other ? await readingsOf(workbook, other, true, wishes) : undefined);
  const own = here ? [] : [await jobsOf(workbook, choice, wishes)].filter(each => each !== undefined);
  const jobs = here ? await jobsFor(workbook, choice, named, isPieces, wishes) : own;
  const catalogue = reading?.catalogue ?? jobs[0]?.catalogue;
  const uncertainty = typed(wishes.fields.uncertainty) ?? reading?.uncertainty ?? typed(wishes.crimps.uncertainty);
  const onPieces = reading && isSameSheet(reading.sheet, pieces?.sheet);
  const byRow = new Map((onPieces ? pieces!.pieces : []).map(piece => [piece.row, piece]));
  const day = wishes.today ?? today();
  const gaugesOf = (of: readonly RecordUse[]) => recordGauges(gauges?.gauges, of, wishes.fields, day);
  const ground: RecordGround = {
    catalogue,
    uncertainty,
    pieceOf: ({ row }) => byRow.get(row),
    gaugesOf,
    instrumentsOf: of => instrumentsOf(gauges?.gauges, of),
  };
  const records = recordsByLine(reading?.rows ?? [], cardsOf(jobs, wishes), here !== undefined, ground);
  if (records.length === 0 || (!here && jobs.length === 0)) throw new NothingToRecord(sheet);
  return {
    records,
    handle: catalogue?.handle ?? '',
    source: [`sheet ${sheet}`, other && `sheet ${other}`].filter(Boolean).join(', '),
    uncertainty: uncertainty?.toString() ?? '',
    reading,
    jobs: jobs[0],
    refusals: gaugesOf(records.flatMap(usesOf)).refusals,
  };
}

/** @throws Error with a sentence where a gauge was overdue on the day it was used */
export function refuseOverdue({ refusals }: Pick<GatheredRecords, 'refusals'>): void {
  if (refusals.length === 0) return;
  throw new Error(`No record with a gauge that was overdue: ${refusals.join('; ')}. Check it, or name another one.`);
}
