import { number } from '../../cells/readers';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { lengthUnitOf, type Length } from '../../core/units/lengthUnit';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { sheetInFormula } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import { NothingToQuote } from '../catalogue/nothingToQuote';
import { usualStep } from '../table/benchStep';
import { ratedDown } from '../table/ratedDown';
import type { RowProblem } from '../table/rowProblem';
import { turnedBy, turnedCell } from '../table/turnedBy';
import type { ReadReport, Takeable } from '../table/tableRows';
import type { TableQuestion } from '../table/tableQuestion';
import { isReady, stopSentence, type JobLine, type JobPlace } from './jobLine';
import { NoJobs, readJobs, type Jobs } from './readJobs';
import { inUnit } from './inUnit';

/** What a quote shows of a job line. */
export type QuoteField =
  'line' | 'label' | 'hose' | 'fittingA' | 'fittingB' | 'overall' | 'guard' | 'quantity' | 'temperature' | 'fluid';

/** A job line that is quoted or bought for; its lengths are in the catalogue's unit. */
export interface QuoteLine {
  /** Row of the sheet, as the sheet shows it. */
  readonly row: number;
  /** As the sheet numbers it; "" where it does not. */
  readonly line: string;
  readonly label: string;
  readonly hose: string;
  /** "" = plain hose. */
  readonly fittingA: string;
  readonly fittingB: string;
  readonly overall: Decimal;
  readonly cutLength: Decimal | undefined;
  readonly quantity: number;
  readonly guard: string;
  /** Hottest in use, in the catalogue's unit; undefined where the line or the catalogue states none. */
  readonly temperature: Decimal | undefined;
  /** "" where the line names none: then it is not checked. */
  readonly fluid: string;
  /** A working pressure of the sheet that is lower than the weakest part's, in the catalogue's unit. */
  readonly lowerPressure: Decimal | undefined;
  /** Formulas that follow the job sheet: `=Jobs!B5`, `=Jobs!F5*25.4`; where there is none, the value is held. */
  readonly formulas: Readonly<Partial<Record<QuoteField, string>>>;
  /** Numbers whose cells hold texts that no formula can follow. */
  readonly held: readonly QuoteField[];
}

/** A line that must not be made, as the sheet calls it: `line 3`, `Topper lift`, `row 7 (Alder DN 12)`. */
export interface StopLine extends RowProblem {
  readonly line: string;
}

/** The lines that can be used, and what became of the others. */
export interface QuoteLines {
  readonly sheet: string;
  readonly lines: readonly QuoteLine[];
  /** Lines that must not be made: they come first, and are in no total. */
  readonly stops: readonly StopLine[];
  readonly report: ReadReport;
  readonly questions: readonly TableQuestion[];
}

/** Which lines are wanted. */
export interface QuoteLineWishes {
  /** What the bench can cut; a millimetre where nobody has said it. */
  readonly step?: Length | undefined;
  /** Rows that are taken though they would be left out. */
  readonly take?: ReadonlySet<Takeable> | undefined;
  /** Lines with a single coupling are meant so. */
  readonly plainEnds?: boolean | undefined;
  /** What has no cost stays out. */
  readonly isPriced?: boolean | undefined;
  /** Lines that are done or planned are wanted like the others. */
  readonly whateverStatus?: boolean;
}

/** Whether our functions read a text just as the sheet's reader did. */
function isReadAlike(text: string, wanted: Decimal, unit: MeasureUnit): boolean {
  try {
    return number({ sign: 'positive', millimetres: lengthUnitOf(unit) === 'mm' })(text, 'length').eq(wanted);
  } catch (error) {
    if (error instanceof TradeError) return false;
    throw error;
  }
}

const NAMES = ['line', 'label', 'hose', 'fittingA', 'fittingB', 'guard'] as const satisfies readonly QuoteField[];

/** A cell that is emptied later stays blank: it is neither 0 degrees nor a fluid. */
const orBlank = (at: string, value = at) => `=IF(LEN(${at})=0,"",${value})`;

function formulasOf(jobs: Jobs, line: JobLine, overall: Decimal, unit: MeasureUnit): Pick<QuoteLine, 'formulas' | 'held'> {
  const { places, sheet, row } = line;
  const cellAt = (place: JobPlace) => `${sheetInFormula(sheet)}!${places[place]}`;
  const at = (place: JobPlace) => `=${cellAt(place)}`;
  const reader = jobs.tables.find(({ reader: each }) => each.place(row - 1, 'hose') === places.hose)?.reader;
  const found: Partial<Record<QuoteField, string>> = {};
  for (const name of NAMES) if (places[name]) found[name] = at(name);
  if (places.fluid) found.fluid = orBlank(cellAt('fluid'));
  if (!reader) return { formulas: found, held: [] };
  const degrees = jobs.catalogue?.units.temperature;
  if (line.temperature && degrees && typeof reader.cell(row - 1, 'temperature') === 'number')
    found.temperature = orBlank(cellAt('temperature'), turnedCell(cellAt('temperature'), line.temperature.unit, degrees));
  // A hose without couplings is as long as it is cut.
  const length = line.overall ? 'overall' : 'cutLength';
  const cell = reader.cell(row - 1, length);
  if (typeof cell === 'number') found.overall = `${at(length)}${turnedBy(line[length]!.unit, unit)}`;
  else if (typeof cell === 'string' && isReadAlike(cell, overall, unit)) found.overall = at(length);
  if (typeof reader.cell(row - 1, 'quantity') === 'number' && places.quantity) found.quantity = at('quantity');
  const isHeld = (field: QuoteField, role: JobPlace) =>
    found[field] === undefined && typeof reader.cell(row - 1, role) === 'string';
  const held = (
    [
      ['overall', length],
      ['quantity', 'quantity'],
      ['temperature', 'temperature'],
    ] as const
  ).flatMap(([field, role]) => (places[role] !== undefined && isHeld(field, role) ? [field] : []));
  return { formulas: found, held };
}

const NO_LENGTH = 'overall length is blank: fill it in';

/** undefined where the overall length, by which a line is priced, is not known. */
function quoteLine(jobs: Jobs, line: JobLine, unit: MeasureUnit): QuoteLine | undefined {
  const { row, places, label, hose, ends, guard, cutLength, quantity, fluid, temperature, pressure } = line;
  const units = jobs.catalogue?.units;
  const [fittingA, fittingB] = [ends[0].fitting, ends[1].fitting];
  // A hose without couplings is as long as it is cut.
  const length = line.overall ?? (fittingA === '' && fittingB === '' ? cutLength : undefined);
  if (!length) return undefined;
  const overall = inUnit(length, unit);
  return {
    ...{ row, label, hose, fittingA, fittingB, guard, overall, quantity: quantity ?? 0 },
    line: places.line ? line.line : '',
    cutLength: cutLength && inUnit(cutLength, unit),
    fluid,
    temperature: temperature && units?.temperature && inUnit(temperature, units.temperature),
    lowerPressure:
      pressure?.from === 'sheet' && units ? ratedDown(inUnit(pressure, units.pressure), units.pressure.symbol) : undefined,
    ...formulasOf(jobs, line, overall, unit),
  };
}

const stopLine = ({ row, line, label, hose, places }: JobLine, sentence: string): StopLine => ({
  ...{ row, sentence },
  line: places.line ? `line ${line}` : label || `${line}${hose && ` (${hose})`}`,
});

const USUAL_STEP: Length = { value: usualStep('mm'), unit: measureUnit('length', 'mm')! };

/** The job lines that a quote or a purchase list is made from, with what was left out. */
export function quoteJobs(workbook: Workbook, { step = USUAL_STEP, take, ...ticks }: QuoteLineWishes): Promise<Jobs> {
  return readJobs(workbook, { step, ...(take && { take }), ...ticks });
}

/**
 * The selected job lines that may be quoted or bought for: selected rows are a choice, one cell stands for the whole table around it.
 * @param unit the catalogue's unit of lengths
 * @throws NothingToQuote where there is no job table, or no line that can be used
 */
export async function quoteLines(workbook: Workbook, unit: MeasureUnit, wishes: QuoteLineWishes = {}): Promise<QuoteLines> {
  const jobs = await quoteJobs(workbook, wishes).catch((error: unknown) => {
    throw error instanceof NoJobs ? new NothingToQuote(error.message) : error;
  });
  const lines: QuoteLine[] = [];
  const stops: StopLine[] = [];
  for (const line of jobs.lines) {
    if (line.standing.kind === 'stop') stops.push(stopLine(line, stopSentence(line)));
    if (!isReady(line) || line.quantity === 0) continue;
    const read = quoteLine(jobs, line, unit);
    if (read) lines.push(read);
    else stops.push(stopLine(line, NO_LENGTH));
  }
  const { report, questions } = jobs;
  if (lines.length > 0) return { sheet: report.sheet, lines, stops, report, questions };
  const why = stops.map(({ row, sentence }) => `row ${row}: ${sentence}`).join('; ');
  throw new NothingToQuote(`No line of sheet ${report.sheet} can be used${why ? `: ${why}` : ''}.`);
}
