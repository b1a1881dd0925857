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
import { readGauges } from '../gauges/readGauges';
import type { BenchCard } from '../jobs/benchCard';
import { benchCardOf } from '../jobs/benchCards';
import { jobChoice, NoJobs, readJobs, type JobChoice, type Jobs, type JobWishes } from '../jobs/readJobs';
import { jobsOfPieces } from '../pieces/jobsOfPieces';
import { assemblyOf, type Piece } from '../pieces/piece';
import { isOfLine } from '../pieces/piecesOfLine';
import { readPieces } from '../pieces/readPieces';
import { benchStep } from '../table/benchStep';
import type { Takeable } from '../table/tableRows';
import { today } from '../table/today';
import type { InspectionRecord, Pressure, RecordCrimp, RecordFields } from './inspectionRecord';
import { ratedPressure } from './ratedPressure';
import { recordGauges, type RecordGauges } from './recordGauges';
import type { Instrument } from './instrument';
import { instrumentsOf } from './recordProof';
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
  /** Day of the record, as `2026-10-05`: today where left out. */
  readonly today?: string | undefined;
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
  /** Why no record must be made: a gauge that was overdue on the day of its use. */
  readonly refusals: readonly string[];
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

function cardsOf(all: readonly Jobs[], { bench, fields }: RecordWishes): readonly BenchCard[] {
  const step = { value: benchStep(bench, bench.unit), unit: measureUnit('length', bench.unit)! };
  const options = { unit: bench.unit, step, machine: fields.machine };
  return all.flatMap(jobs => jobs.lines.map(line => benchCardOf(line, jobs, options)));
}

const firstOf = (rows: readonly CrimpRow[], pick: (row: CrimpRow) => string) => rows.map(pick).find(Boolean) ?? '';

function allOf(rows: readonly CrimpRow[], pick: (row: CrimpRow) => string): string {
  return [...new Set(rows.map(pick).filter(Boolean))].join(', ');
}

/** What all records of one gathering share. */
interface Ground {
  readonly catalogue: Catalogue | undefined;
  readonly uncertainty: Decimal | undefined;
  /** The piece of a row, where the readings stand on the sheet Pieces. */
  readonly pieceOf: (row: CrimpRow) => Piece | undefined;
  readonly gaugesOf: (pieces: readonly Piece[]) => RecordGauges;
  readonly instrumentsOf: (pieces: readonly Piece[]) => readonly Instrument[];
}

function pressureOf(rows: readonly CrimpRow[], card: BenchCard | undefined, { catalogue }: Ground): Pressure | undefined {
  // What must not be assembled has no pressure.
  if (card?.isStop) return undefined;
  if (card?.workingPressure) return { value: card.workingPressure, unit: card.pressureUnit };
  return catalogue && ratedPressure(catalogue, rows);
}

/** A crimp with what its piece says of it. */
function withPiece(crimp: RecordCrimp, piece: Piece | undefined): RecordCrimp {
  if (!piece) return crimp;
  const [a, b] = piece.ends;
  const { lot, die } = /b/i.test(crimp.end) ? b : a;
  return { ...crimp, fittingLot: lot || crimp.fittingLot, machine: crimp.machine || piece.machine, die: crimp.die || die };
}

const listed = (texts: readonly string[]) => [...new Set(texts.filter(Boolean))].join(', ');

function recordOf(all: readonly CrimpRow[], card: BenchCard | undefined, ground: Ground): InspectionRecord {
  const isScrapped = (row: CrimpRow) => ground.pieceOf(row)?.status === 'scrapped';
  const rows = all.filter(row => !isScrapped(row));
  const pieces = [...new Set(rows.flatMap(row => ground.pieceOf(row) ?? []))];
  const scrapped = [...new Set(all.filter(isScrapped).map(({ piece }) => piece))];
  const gauges = ground.gaugesOf(pieces);
  const unit = all[0]?.unit ?? card?.unit ?? 'mm';
  const line = all[0]?.line || card?.line || '';
  const title = all[0] ? (line ? `Line ${line}` : all[0].title) : `Line ${line}`;
  const crimps =
    rows.length > 0 ? crimpsOfRows(rows, unit, ground.uncertainty) : card && all.length === 0 ? crimpsOfCard(card) : [];
  return {
    title: card?.isStop ? `${title}: STOP` : title,
    line,
    label: card?.label || (pieces[0]?.label ?? ''),
    order: firstOf(all, row => row.order) || (card?.order ?? ''),
    assembly: allOf(rows, row => row.assembly) || listed(pieces.map(assemblyOf)) || (card?.assembly ?? ''),
    quantity: card?.quantity ? String(card.quantity) : '',
    hose: firstOf(all, row => row.hose) || (card?.hose ?? ''),
    hoseLot: allOf(rows, row => row.hoseLot) || listed(pieces.map(({ lot }) => lot)),
    hoseMade: allOf(rows, row => dateText(row.hoseMade)),
    unit,
    workingPressure: pressureOf(rows, card, ground),
    crimps: crimps.map((crimp, index) => withPiece(crimp, rows[index] && ground.pieceOf(rows[index]))),
    pieces,
    scrapped,
    gauges: gauges.facts,
    instruments: ground.instrumentsOf(pieces),
    problems: [...(card?.problems ?? []), ...(card?.notes ?? []), ...gauges.notes],
  };
}

/** Crimps of one line together, in the order of the sheet; those without a line by their assembly, else each for itself. */
function byLine(rows: readonly CrimpRow[], { pieceOf }: Ground): readonly (readonly CrimpRow[])[] {
  const groups = new Map<string, CrimpRow[]>();
  for (const row of rows) {
    const piece = pieceOf(row);
    const own = row.assembly ? `assembly ${partKey(row.assembly)}` : `row ${row.row}`;
    const ofLine = row.line ? `line ${partKey(row.line)}` : own;
    // A sheet that grows week by week has each line number many times.
    const name = piece ? `piece ${partKey(assemblyOf(piece))} ${partKey(piece.order)} ${ofLine}` : ofLine;
    const group = groups.get(name);
    if (group) group.push(row);
    else groups.set(name, [row]);
  }
  return [...groups.values()];
}

function joined(rows: readonly CrimpRow[], cards: readonly BenchCard[], crimpsLead: boolean, ground: Ground) {
  const isOf = (row: CrimpRow, card: BenchCard) => {
    const piece = ground.pieceOf(row);
    if (piece) return isOfLine(piece, card);
    return row.line !== '' && partKey(card.line) === partKey(row.line);
  };
  if (!crimpsLead)
    return cards.map(card =>
      recordOf(
        rows.filter(row => isOf(row, card)),
        card,
        ground,
      ),
    );
  const cardFor = (group: readonly CrimpRow[]) =>
    cards.find(card => (group[0]!.line || ground.pieceOf(group[0]!) ? isOf(group[0]!, card) : card.row === group[0]!.row));
  return byLine(rows, ground).map(group => recordOf(group, cardFor(group), ground));
}

const isSameSheet = (one: string, other: string | undefined) => one.toLowerCase() === other?.toLowerCase();

/** Job lines of the readings' own sheet, of the other one, or of the sheets that the pieces were planned from. */
async function jobsFor(workbook: Workbook, choice: JobChoice, other: string, isPieces: boolean, wishes: RecordWishes) {
  const whole = { ...choice, isChoice: false };
  if (!isPieces) {
    const own = await jobsOf(workbook, whole, wishes);
    const elsewhere = !own && other ? await jobsOf(workbook, { ...firstCell(other), isChoice: false }, wishes) : undefined;
    return [own ?? elsewhere].filter(each => each !== undefined);
  }
  const named = other ? await jobsOf(workbook, { ...firstCell(other), isChoice: false }, wishes) : undefined;
  return named ? [named] : jobsOfPieces(workbook);
}

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
  const gaugesOf = (of: readonly Piece[]) => recordGauges(gauges?.gauges, of, wishes.fields, day);
  const ground: Ground = {
    catalogue,
    uncertainty,
    pieceOf: ({ row }) => byRow.get(row),
    gaugesOf,
    instrumentsOf: of => instrumentsOf(gauges?.gauges, of),
  };
  const records = joined(reading?.rows ?? [], cardsOf(jobs, wishes), here !== undefined, ground);
  if (records.length === 0 || (!here && jobs.length === 0)) throw new NothingToRecord(sheet);
  return {
    records,
    handle: catalogue?.handle ?? '',
    source: [`sheet ${sheet}`, other && `sheet ${other}`].filter(Boolean).join(', '),
    uncertainty: uncertainty?.toString() ?? '',
    reading,
    jobs: jobs[0],
    refusals: gaugesOf(records.flatMap(record => record.pieces ?? [])).refusals,
  };
}

/** @throws Error with a sentence where a gauge was overdue on the day it was used */
export function refuseOverdue({ refusals }: Pick<GatheredRecords, 'refusals'>): void {
  if (refusals.length === 0) return;
  throw new Error(`No record with a gauge that was overdue: ${refusals.join('; ')}. Check it, or name another one.`);
}
