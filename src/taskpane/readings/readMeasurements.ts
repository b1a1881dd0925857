import { measureCrimp } from '../../core/crimp/crimpMeasure';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { addressOf } from '../../host/a1';
import { readDiameter, readTolerance } from '../../host/cells/crimpReaders';
import { number } from '../../host/cells/readers';
import type { CellValue, RangeAddress, RangeContent } from '../../host/workbook';
import { isDateFormat } from '../columns/dateTrouble';
import { cellOf, type FoundTable } from '../columns/findTable';
import { unitOfHeading } from '../columns/roles';
import { crimpDay } from './crimpDay';
import { crimpCells, type CellPlace, type CrimpCells } from './crimpCells';
import type { MeasurementRole } from './measurementRoles';
import { UNNAMED, type Crimp, type CrimpPlace, type MeasurementProblem, type Measurements } from './measurements';
import type { ProposedMeasurements } from './proposeMeasurements';

/** What a crimp should be; diameters in the measurements' unit. */
export interface CrimpTarget {
  readonly target: Decimal;
  readonly tolerance: Decimal;
  readonly largestSpread?: Decimal | undefined;
}

/** How to read; diameters in `unit`. */
export interface ReadingWishes {
  readonly unit: LengthUnit;
  /** Rows that make one crimp where each reading has its own row. */
  readonly readingsACrimp: number;
  /** For rows that state none and are in no catalogue. */
  readonly typed?: Partial<CrimpTarget> | undefined;
  /** Stated once for the whole sheet, above the table. */
  readonly above?: Partial<CrimpTarget> | undefined;
  /** Machine of rows that name none. */
  readonly machine?: string | undefined;
  /** The catalogue's crimp data of a hose and a fitting; throws TradeError where there is none. */
  readonly setUp?: ((hose: string, fitting: string) => CrimpTarget) | undefined;
  /** Rows of the sheet as it shows them; undefined = the whole table. */
  readonly picked?: ReadonlySet<number> | undefined;
}

/** A reading further from the target than this share of it is a slip of the decimal point or the unit. */
const FURTHEST = 0.1;

const readDial = number({ hint: 'enter the dial setting' });

const LABELS: Partial<Record<MeasurementRole, string>> = {
  target: 'target',
  tolerance: 'tolerance',
  smallest: 'smallest diameter',
  largest: 'largest diameter',
};

/** Reads the cells of one crimp and remembers the last one looked at, for a problem's jump. */
class CrimpReader {
  at: CellPlace;

  constructor(
    private readonly used: RangeContent,
    private readonly table: FoundTable,
    private readonly crimp: CrimpCells,
    private readonly wishes: ReadingWishes,
  ) {
    this.at = crimp.readings[0] ?? { row: crimp.row, column: table.block.column };
  }

  private cell(place: CellPlace, label: string): Exclude<CellValue, object> {
    this.at = place;
    const value = cellOf(this.used, place.row, place.column);
    if (typeof value === 'object') {
      throw new TradeError('notANumber', label, `is ${value.error}`, value.sentence ?? 'put that cell right first');
    }
    return typeof value === 'string' ? value.trim() : value;
  }

  text(role: MeasurementRole): string {
    const place = this.crimp.cells[role];
    return place ? String(this.cell(place, role)) : '';
  }

  day(): number | undefined {
    const place = this.crimp.cells.date;
    const value = place && this.cell(place, 'date');
    return value === undefined || typeof value === 'boolean' ? undefined : crimpDay(value);
  }

  dial(): Decimal | undefined {
    const place = this.crimp.cells.dial;
    const value = place && this.cell(place, 'dial');
    return value === undefined || value === '' ? undefined : readDial(value, 'dial');
  }

  private length(place: CellPlace, label: string, read: typeof readDiameter): Decimal | undefined {
    const value = this.cell(place, label);
    if (value === '') return undefined;
    const format = this.used.formats[place.row - this.used.row]?.[place.column - this.used.column] ?? '';
    if (typeof value === 'number' && isDateFormat(format)) {
      throw new TradeError('date', label, 'is a date', 'format the cell as text and type the fraction again');
    }
    const heading = this.table.headings[place.column - this.table.block.column] ?? '';
    const { unit } = this.wishes;
    return convertLength(read(value, label), unitOfHeading(heading) ?? unit, unit);
  }

  /** A diameter or a tolerance of a role; undefined where there is no such column or its cell is blank. */
  measure(role: 'target' | 'tolerance' | 'smallest' | 'largest'): Decimal | undefined {
    const place = this.crimp.cells[role];
    return place && this.length(place, LABELS[role]!, role === 'tolerance' ? readTolerance : readDiameter);
  }

  readings(): Decimal[] {
    const several = this.crimp.readings.length > 1;
    return this.crimp.readings.map((place, index) => {
      const label = several ? `reading ${index + 1}` : 'reading';
      const value = this.length(place, label, readDiameter);
      if (value) return value;
      throw new TradeError('blank', label, 'is blank', 'measure it, or clear the others');
    });
  }

  isUnmeasured(): boolean {
    return this.crimp.readings.every(({ row, column }) => cellOf(this.used, row, column) === '');
  }
}

/** Target and tolerance: from the row, else stated once above the table, else from the catalogue, else typed into the pane. */
function targetOf(reader: CrimpReader, hose: string, fitting: string, wishes: ReadingWishes) {
  const { above, typed, setUp } = wishes;
  const smallest = reader.measure('smallest');
  const largest = reader.measure('largest');
  const isBand = smallest !== undefined && largest !== undefined;
  const ownTarget = reader.measure('target') ?? (isBand ? smallest.plus(largest).div(2) : undefined) ?? above?.target;
  const ownTolerance = reader.measure('tolerance') ?? (isBand ? largest.minus(smallest).div(2) : undefined) ?? above?.tolerance;
  const isKnown = ownTarget !== undefined && ownTolerance !== undefined;
  const found = !isKnown && setUp && hose && fitting ? setUp(hose, fitting) : undefined;
  const target = ownTarget ?? found?.target ?? typed?.target;
  const tolerance = ownTolerance ?? found?.tolerance ?? typed?.tolerance;
  const advice =
    'no column, nothing above the table and no crimp data of hose and fitting give it: enter it under Limits and machine';
  if (!target) throw new TradeError('blank', 'target', 'is not known', advice);
  if (!tolerance) throw new TradeError('blank', 'tolerance', 'is not known', advice);
  const source: CrimpPlace['source'] = isKnown ? 'sheet' : found ? 'catalogue' : 'typed';
  return { target, tolerance, largestSpread: above?.largestSpread ?? found?.largestSpread ?? typed?.largestSpread, source };
}

function combinationOf(reader: CrimpReader, hose: string, fitting: string): string {
  return reader.text('combination') || [hose, fitting].filter(Boolean).join(' with ') || UNNAMED;
}

function placeOf(reader: CrimpReader, crimp: CrimpCells, sheet: string, wishes: ReadingWishes): CrimpPlace {
  const [hose, fitting] = [reader.text('hose'), reader.text('fitting')];
  const combination = combinationOf(reader, hose, fitting);
  const known = {
    row: crimp.row + 1,
    readingsAt: crimp.readings.map(place => ({ sheet, address: addressOf({ ...place, rows: 1, columns: 1 }) })),
    combination,
    hose,
    fitting,
    end: crimp.end || reader.text('end'),
    machine: reader.text('machine') || (wishes.machine ?? ''),
    die: reader.text('die'),
    line: reader.text('line'),
    date: reader.day(),
    dial: reader.dial(),
  };
  return { ...known, ...targetOf(reader, hose, fitting, wishes) };
}

function crimpOf(reader: CrimpReader, crimp: CrimpCells, place: CrimpPlace, { unit, readingsACrimp }: ReadingWishes): Crimp {
  const readings = reader.readings();
  const isColumn = crimp.readings.length > 1 && crimp.readings[0]!.row !== crimp.readings[1]!.row;
  if (readings.length < 2 || (isColumn && readings.length < readingsACrimp)) {
    const wanted = Math.max(2, isColumn || readings.length < 2 ? readingsACrimp : 2);
    const advice = isColumn || readings.length < 2 ? ', or say under Limits and machine how many rows make a crimp' : '';
    throw new TradeError('shape', 'crimp', `has ${readings.length} of ${wanted} readings`, `measure the others${advice}`);
  }
  readings.forEach((reading, index) => {
    if (reading.minus(place.target).abs().lte(place.target.times(FURTHEST))) return;
    reader.at = crimp.readings[index]!;
    const advice = `it is too far from the target ${place.target} ${unit}: check the decimal point and the unit`;
    throw new TradeError('range', `reading ${index + 1}`, `is ${reading}`, advice);
  });
  return { ...place, readings, measure: measureCrimp({ readings, target: place.target, tolerance: place.tolerance }) };
}

const NAMING: readonly MeasurementRole[] = ['combination', 'hose', 'fitting', 'target', 'line'];

/** Reads the crimps of a table: what is measured, what is not measured yet, and what cannot be used. */
export function readMeasurements(
  used: RangeContent,
  table: FoundTable,
  proposed: ProposedMeasurements,
  wishes: ReadingWishes,
): Measurements {
  const crimps: Crimp[] = [];
  const waiting: CrimpPlace[] = [];
  const problems: MeasurementProblem[] = [];
  const addressAt = (place: CellPlace): RangeAddress => ({
    sheet: table.sheet,
    address: addressOf({ ...place, rows: 1, columns: 1 }),
  });
  for (const crimp of crimpCells(used, table, proposed, wishes.readingsACrimp, wishes.picked)) {
    const reader = new CrimpReader(used, table, crimp, wishes);
    const isNamed = NAMING.some(role => {
      const place = crimp.cells[role];
      return place && cellOf(used, place.row, place.column) !== '';
    });
    if (reader.isUnmeasured() && !isNamed) continue;
    try {
      const place = placeOf(reader, crimp, table.sheet, wishes);
      if (reader.isUnmeasured()) waiting.push(place);
      else crimps.push(crimpOf(reader, crimp, place, wishes));
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      const end = crimp.end ? `end ${crimp.end}: ` : '';
      problems.push({ row: reader.at.row + 1, sentence: `${end}${error.message}`, at: addressAt(reader.at) });
    }
  }
  return { unit: wishes.unit, crimps, waiting, problems };
}
