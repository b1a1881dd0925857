import { typedNumber } from '../../cells/typedNumber';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { partKey } from '../../core/catalogue/partName';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { readOptionsOf, type CrimpFields } from '../crimps/crimpFields';
import type { CrimpRow } from '../crimps/crimpRow';
import { readCrimpRows, type CrimpReading } from '../crimps/readCrimpRows';
import type { BenchCard } from '../jobs/benchCard';
import { benchCardOf } from '../jobs/benchCards';
import { jobChoice, NoJobs, readJobs, type JobChoice, type Jobs, type JobWishes } from '../jobs/readJobs';
import { benchStep } from '../table/benchStep';
import type { Takeable } from '../table/tableRows';
import type { InspectionRecord, Pressure, RecordFields } from './inspectionRecord';
import { ratedPressure } from './ratedPressure';
import { crimpsOfCard, crimpsOfRows, dateText } from './recordCrimps';

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
}

type JobTicks = Pick<JobWishes, 'take' | 'plainEnds'>;

/** Records read every row, hidden ones too. */
export const ALL_LINES: JobTicks = { take: new Set(['hidden', 'below']) };

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
}

const typed = (text: string) => typedNumber(text, 'uncertainty U', { sign: 'positive' }).value;

const firstCell = (sheet: string) => ({ sheet, block: { row: 0, column: 0, rows: 1, columns: 1 } });

/** The crimps of a sheet; undefined where it has no readings. */
async function readingsOf(workbook: Workbook, sheet: string, isOther: boolean, wishes: RecordWishes) {
  const options = readOptionsOf({ ...wishes.crimps, machine: wishes.fields.machine || wishes.crimps.machine }, wishes.take);
  const reading = await readCrimpRows(workbook, options, isOther ? firstCell(sheet) : undefined);
  return reading && reading.rows.length > 0 ? reading : undefined;
}

/** The job lines of a sheet, whatever their status, hidden ones too; undefined where it has none. */
async function jobsOf(
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

function cardsOf(jobs: Jobs | undefined, { bench, fields }: RecordWishes): readonly BenchCard[] {
  const step = { value: benchStep(bench, bench.unit), unit: measureUnit('length', bench.unit)! };
  const options = { unit: bench.unit, step, machine: fields.machine };
  return jobs?.lines.map(line => benchCardOf(line, jobs, options)) ?? [];
}

const firstOf = (rows: readonly CrimpRow[], pick: (row: CrimpRow) => string) => rows.map(pick).find(Boolean) ?? '';

function allOf(rows: readonly CrimpRow[], pick: (row: CrimpRow) => string): string {
  return [...new Set(rows.map(pick).filter(Boolean))].join(', ');
}

/** What all records of one gathering share. */
interface Ground {
  readonly catalogue: Catalogue | undefined;
  readonly uncertainty: Decimal | undefined;
}

function pressureOf(rows: readonly CrimpRow[], card: BenchCard | undefined, { catalogue }: Ground): Pressure | undefined {
  // What must not be assembled has no pressure.
  if (card?.isStop) return undefined;
  if (card?.workingPressure) return { value: card.workingPressure, unit: card.pressureUnit };
  return catalogue && ratedPressure(catalogue, rows);
}

function recordOf(rows: readonly CrimpRow[], card: BenchCard | undefined, ground: Ground): InspectionRecord {
  const line = rows[0]?.line || card?.line || '';
  const title = rows[0] ? (line ? `Line ${line}` : rows[0].title) : `Line ${line}`;
  const unit = rows[0]?.unit ?? card?.unit ?? 'mm';
  return {
    title: card?.isStop ? `${title}: STOP` : title,
    line,
    label: card?.label ?? '',
    order: firstOf(rows, row => row.order) || (card?.order ?? ''),
    assembly: allOf(rows, row => row.assembly) || (card?.assembly ?? ''),
    quantity: card?.quantity ? String(card.quantity) : '',
    hose: firstOf(rows, row => row.hose) || (card?.hose ?? ''),
    hoseLot: allOf(rows, row => row.hoseLot),
    hoseMade: allOf(rows, row => dateText(row.hoseMade)),
    unit,
    workingPressure: pressureOf(rows, card, ground),
    crimps: rows.length > 0 ? crimpsOfRows(rows, unit, ground.uncertainty) : card ? crimpsOfCard(card) : [],
    problems: [...(card?.problems ?? []), ...(card?.notes ?? [])],
  };
}

/** Crimps of one line together, in the order of the sheet; those without a line by their assembly, else each for itself. */
function byLine(rows: readonly CrimpRow[]): readonly (readonly CrimpRow[])[] {
  const groups = new Map<string, CrimpRow[]>();
  for (const row of rows) {
    const own = row.assembly ? `assembly ${partKey(row.assembly)}` : `row ${row.row}`;
    const name = row.line ? `line ${partKey(row.line)}` : own;
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  return [...groups.values()];
}

function joined(rows: readonly CrimpRow[], cards: readonly BenchCard[], crimpsLead: boolean, ground: Ground) {
  const isOf = (row: CrimpRow, card: BenchCard) => row.line !== '' && partKey(card.line) === partKey(row.line);
  if (!crimpsLead)
    return cards.map(card =>
      recordOf(
        rows.filter(row => isOf(row, card)),
        card,
        ground,
      ),
    );
  const cardFor = (group: readonly CrimpRow[]) =>
    cards.find(card => (group[0]!.line ? isOf(group[0]!, card) : card.row === group[0]!.row));
  return byLine(rows).map(group => recordOf(group, cardFor(group), ground));
}

/**
 * Reads the records of the selected lines: readings and job data from the selected table, and from another sheet what it lacks.
 * @throws NothingToRecord where the sheet holds neither readings nor job lines
 */
export async function gatherRecords(workbook: Workbook, wishes: RecordWishes): Promise<GatheredRecords> {
  const choice = await jobChoice(workbook);
  const { sheet } = choice;
  const other = wishes.otherSheet !== sheet && (await workbook.sheets()).includes(wishes.otherSheet) ? wishes.otherSheet : '';
  const here = await readingsOf(workbook, sheet, false, wishes);
  const reading = here ?? (other ? await readingsOf(workbook, other, true, wishes) : undefined);
  const jobsHere = await jobsOf(workbook, here ? { ...choice, isChoice: false } : choice, wishes);
  const isElsewhere = !jobsHere && here !== undefined && other !== '';
  const jobs = isElsewhere ? await jobsOf(workbook, { ...firstCell(other), isChoice: false }, wishes) : jobsHere;
  const catalogue = reading?.catalogue ?? jobs?.catalogue;
  const uncertainty = typed(wishes.fields.uncertainty) ?? reading?.uncertainty ?? typed(wishes.crimps.uncertainty);
  const records = joined(reading?.rows ?? [], cardsOf(jobs, wishes), here !== undefined, { catalogue, uncertainty });
  if (records.length === 0 || (!here && !jobs)) throw new NothingToRecord(sheet);
  const source = [`sheet ${sheet}`, other && `sheet ${other}`].filter(Boolean).join(', ');
  return { records, handle: catalogue?.handle ?? '', source, uncertainty: uncertainty?.toString() ?? '', reading, jobs };
}
