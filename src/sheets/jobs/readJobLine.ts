import type { Catalogue } from '../../core/catalogue/catalogue';
import { hasDerating } from '../../core/catalogue/pressureAt';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { Length } from '../../core/units/lengthUnit';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';
import { nameOfCell, type Measure } from '../../cells/sheetCell';
import type { TableReader } from '../table/tableReader';
import type { GroupOfRow } from './hoseGroups';
import type { JobLine, JobPlace, RatedPressure, SheetEnd, Standing } from './jobLine';
import { isOverallByName, type JobEndField, type JobRole } from './jobRoles';
import { judgeLengths, judgeParts, type CatalogueVerdict, type LineFacts } from './jobStanding';
import { jobStatus } from './jobStatus';

/** How lines are read. */
export interface LineReading {
  readonly catalogue: Catalogue | undefined;
  /** What the bench can cut. */
  readonly step: Length;
  /** Unit of pressures where a heading names none; undefined: a bare number is not taken. */
  readonly pressureUnit: MeasureUnit | undefined;
  /** Lines with a single coupling are meant so: their other end stays plain hose. */
  readonly plainEnds: boolean;
  /** Rows that are done or planned already are taken all the same. */
  readonly takesDone: boolean;
  readonly takesPlanned: boolean;
  /** What the heading of its group says of a row. */
  readonly groupOf?: ((row: number) => GroupOfRow | undefined) | undefined;
}

const PLACES: readonly JobPlace[] = [
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'cutLength',
  'quantity',
  'guard',
  'label',
  'line',
  'temperature',
  'fluid',
];

/** Reads one row; what cannot be read becomes a reason not to make the line. */
class LineReader {
  readonly reasons: string[] = [];
  readonly notes: string[] = [];

  constructor(
    readonly reader: TableReader<JobRole>,
    readonly row: number,
  ) {}

  private attempt<T>(read: () => T, into: string[]): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      into.push(error.message);
      return undefined;
    }
  }

  name(role: JobRole): string {
    return this.reader.name(this.row, role);
  }

  /** A part that the line is made of: an error value in its place is no blank. */
  part(role: JobRole, label: string): string {
    this.attempt(() => this.reader.refuseErrorName(this.row, role, label), this.reasons);
    return this.name(role);
  }

  /** What the line cannot be made without reading. */
  must(role: JobRole, sign?: 'any' | 'notNegative' | 'positive'): Measure | undefined {
    return this.attempt(() => this.reader.measure(this.row, role, sign), this.reasons);
  }

  /** What is worth a note where it cannot be read. */
  may(role: JobRole, sign?: 'any' | 'notNegative' | 'positive'): Measure | undefined {
    return this.attempt(() => this.reader.measure(this.row, role, sign), this.notes);
  }

  number(role: JobRole, label: string): number | undefined {
    return this.attempt(() => this.reader.number(this.row, role, label, 'any'), this.notes)?.toNumber();
  }

  quantity(): number | undefined {
    if (!this.reader.has('quantity')) return 1;
    const count = this.attempt(() => this.reader.count(this.row, 'quantity', 'quantity'), this.reasons);
    if (count === undefined && this.reasons.length === 0) this.reasons.push('quantity is blank: fill it in');
    return count;
  }
}

function sheetEnd(line: LineReader, end: 'A' | 'B'): SheetEnd {
  const role = (field: JobEndField): JobRole => (line.reader.has(`${field}${end}`) ? `${field}${end}` : field);
  const text = (field: JobEndField) => line.name(role(field));
  const small = (field: JobEndField, sign?: 'notNegative') => line.may(role(field), sign);
  const target = small('target');
  const tolerance = small('tolerance');
  const around = (sign: 1 | -1) =>
    target && tolerance && { value: target.value.plus(sumIn(tolerance, target.unit).times(sign)), unit: target.unit };
  const [smallest, largest] = [small('smallest') ?? around(-1), small('largest') ?? around(1)];
  const middle = smallest && largest && { value: smallest.value.plus(sumIn(largest, smallest.unit)).div(2), unit: smallest.unit };
  return {
    fitting: line.part(end === 'A' ? 'fittingA' : 'fittingB', `fitting ${end}`),
    ferrule: text('ferrule'),
    die: text('die'),
    dial: text('dial'),
    target: target ?? middle,
    smallest,
    largest,
    crimpLength: small('crimpLength'),
    skiveOutside: small('skiveOutside', 'notNegative'),
    skiveInside: small('skiveInside', 'notNegative'),
    insertionDepth: small('insertionDepth'),
    angle: line.number(role('angle'), `angle ${end}`),
  };
}

const sumIn = ({ value, unit }: Measure, to: MeasureUnit): Decimal => convertMeasure(value, unit, to);

/** The weakest part's rating; a pressure typed in the sheet counts only where it is lower. */
function rated(line: LineReader, judged: CatalogueVerdict, { catalogue, pressureUnit }: LineReading): RatedPressure | undefined {
  const typed = line.reader.unitOf('pressure') || !pressureUnit ? line.may('pressure') : bare(line, pressureUnit);
  const rating = judged.assembly?.workingPressure;
  const weakest = rating !== undefined && catalogue ? { value: new Decimal(rating), unit: catalogue.units.pressure } : undefined;
  const ofSheet: RatedPressure | undefined = typed && { ...typed, from: 'sheet' };
  const ofPart: RatedPressure | undefined = weakest && { ...weakest, from: 'weakest part' };
  if (!ofSheet || !ofPart) return ofSheet ?? ofPart;
  if (sumIn(ofSheet, ofPart.unit).lt(ofPart.value)) return ofSheet;
  if (!sumIn(ofSheet, ofPart.unit).eq(ofPart.value)) {
    line.notes.push(
      `the sheet says ${ofSheet.value} ${ofSheet.unit.symbol}, the weakest part is rated ${ofPart.value} ${ofPart.unit.symbol}: the lower counts`,
    );
  }
  return ofPart;
}

/** A pressure without a unit, taken in the unit that was said for the pane. */
function bare(line: LineReader, unit: MeasureUnit): Measure | undefined {
  const value = line.number('pressure', 'working pressure');
  return value !== undefined && value > 0 ? { value: new Decimal(value), unit } : undefined;
}

/** What the row's own check of the assembly objects to. */
function objection({ reader, row }: LineReader): string | undefined {
  const cell = reader.cell(row, 'check');
  if (typeof cell === 'object') return `its check is ${cell.error}${cell.sentence ? ` (${cell.sentence})` : ''}`;
  const text = nameOfCell(cell);
  return text === '' || /^(?:ok|yes|true|checked|passed)\b/i.test(text) ? undefined : `its check says: ${text}`;
}

function limitsOf(line: LineReader): JobLine['limits'] {
  const [shortest, longest] = [line.may('shortestLength'), line.may('longestLength')];
  return shortest && longest ? { shortest, longest } : undefined;
}

/** What is asked where a line names a single coupling. */
export const ONE_COUPLING = 'only one coupling is named: name the other, or say that the other end stays plain hose';

/** Lengths of a line: what to cut is the sheet's, or the length of a hose without couplings. */
function lengthsOf(line: LineReader, fittings: readonly [string, string]) {
  const overall = line.must('overall');
  const stated = line.must('cutLength');
  if (stated || !overall || line.reader.has('cutLength') || fittings.some(name => name !== ''))
    return { overall, cutLength: stated };
  const hasCouplings = line.reader.has('fittingA') || line.reader.has('fittingB');
  // `Overall length` speaks of couplings; where the sheet names none, somebody has to say which length it is.
  if (!hasCouplings && isOverallByName(line.reader.heading('overall'))) {
    line.reasons.push(`no couplings are named: say whether ${line.reader.heading('overall')} is the length to cut`);
    return { overall, cutLength: undefined };
  }
  return { overall, cutLength: overall };
}

/** An error value that only repeats what another reason says of the cell it comes from. */
function isEcho(reason: string, all: readonly string[]): boolean {
  if (!/\bis #/.test(reason)) return false;
  return all.some(other => other !== reason && !/\bis #/.test(other) && reason.includes(other.split(': ')[0]!));
}

function standingOf(line: LineReader, reasons: readonly string[], reading: LineReading): Standing {
  const status = line.reader.has('status') ? jobStatus(line.reader.cell(line.row, 'status')) : 'open';
  const text = line.name('status');
  if (status === 'done' && !reading.takesDone) return { kind: 'done', status: text };
  if (status === 'planned' && !reading.takesPlanned) return { kind: 'planned' };
  const all = [...(status === 'held' ? [`its status says ${text}`] : []), ...reasons];
  const once = [...new Set(all)].filter((reason, _, every) => !isEcho(reason, every));
  return once.length > 0 ? { kind: 'stop', reasons: once } : { kind: 'ready', partsChecked: reading.catalogue !== undefined };
}

/** One row of a job table as a line. */
export function readJobLine(reader: TableReader<JobRole>, row: number, reading: LineReading): JobLine {
  const line = new LineReader(reader, row);
  for (const { refusal } of reader.questions) if (refusal !== undefined) line.reasons.push(refusal);
  const group = reading.groupOf?.(row);
  const hose = group?.hose ?? line.part('hose', 'hose');
  if (group?.refusal !== undefined) line.reasons.push(group.refusal);
  if (hose === '' && line.reasons.length === 0) line.reasons.push('hose is blank: fill it in');
  const ends = [sheetEnd(line, 'A'), sheetEnd(line, 'B')] as const;
  const fittings = [ends[0].fitting, ends[1].fitting] as const;
  const { overall, cutLength } = lengthsOf(line, fittings);
  if (!cutLength && line.reasons.length === 0 && (reader.has('cutLength') || !overall))
    line.reasons.push(`${reader.has('cutLength') ? 'cut' : 'overall'} length is blank: fill it in`);
  const quantity = line.quantity();
  const temperature = line.must('temperature', 'any');
  const facts: LineFacts = {
    hose,
    fittings,
    overall,
    cutLength,
    allowance: line.must('allowance', 'any'),
    cutOffs: [line.must('cutOffA', 'any'), line.must('cutOffB', 'any')],
    bore: line.may('bore'),
    temperature,
    fluid: line.name('fluid'),
    namesCouplings: reader.has('fittingA') || reader.has('fittingB'),
  };
  const isOneCoupling = (fittings[0] === '') !== (fittings[1] === '');
  const isError = typeof reader.cell(row, 'fittingA') === 'object' || typeof reader.cell(row, 'fittingB') === 'object';
  if (isOneCoupling && !isError && !reading.plainEnds) line.reasons.push(ONE_COUPLING);
  const judged: CatalogueVerdict = hose === '' ? { reasons: [], assembly: undefined } : judgeParts(reading.catalogue, facts);
  const lengths = judgeLengths(reading.catalogue, facts, reading.step);
  const check = objection(line);
  const isDerated = reading.catalogue !== undefined && hasDerating(reading.catalogue, { hose });
  const pressure = rated(line, judged, reading);
  const number = `row ${row + 1}`;
  const reasons = [...line.reasons, ...judged.reasons, ...lengths, ...(check && judged.reasons.length === 0 ? [check] : [])];
  return {
    sheet: reader.table.sheet,
    row: row + 1,
    line: line.name('line') || number,
    label: line.name('label'),
    order: line.name('order'),
    assembly: line.name('assembly'),
    due: line.name('due'),
    status: line.name('status'),
    hose,
    ends,
    quantity,
    overall,
    cutLength,
    limits: limitsOf(line),
    bore: facts.bore,
    twist: line.number('twist', 'twist angle'),
    pressure,
    temperature,
    hasDerating: isDerated,
    fluid: facts.fluid,
    guard: line.name('guard'),
    note: line.name('note'),
    crimper: line.name('crimper'),
    standing: standingOf(line, reasons, reading),
    notes: line.notes,
    places: {
      ...(group?.place !== undefined && { hose: group.place }),
      ...Object.fromEntries(
        PLACES.flatMap(role => (reader.has(role) && reader.name(row, role) !== '' ? [[role, reader.place(row, role)!]] : [])),
      ),
    },
  };
}
