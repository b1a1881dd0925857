import { lengthLimits, usualLengthRule } from '../../core/length/lengthLimits';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { number } from '../../cells/readers';
import { benchCut } from './benchRounding';
import { countOfCell, lengthOfCell, unitOfHeading } from '../table/lengthCell';
import { cellOf, dataRows, sheetRow, textOf, type SheetTable } from '../table/sheetTable';
import type { BenchCard, CrimpEnd } from './benchCard';
import { endColumn, type CardField, type EndField } from './cardHeadings';
import type { CrimpLookUp } from './crimpLookUp';

/** How the lines are read. */
export interface CardReading {
  readonly unit: LengthUnit;
  /** What the bench can cut, in `unit`. */
  readonly step: Decimal;
  /** Pressure unit where the heading names none. */
  readonly pressureUnit: string;
  readonly lookUp?: CrimpLookUp | undefined;
}

/** Reads one row; what cannot be read becomes a sentence of the card instead of ending it. */
class RowReader {
  readonly problems: string[] = [];

  constructor(
    readonly table: SheetTable<CardField>,
    readonly row: number,
    readonly unit: LengthUnit,
  ) {}

  attempt<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.problems.push(error.message);
      return undefined;
    }
  }

  text(field: CardField): string {
    return textOf(this.table, this.row, field);
  }

  length(field: CardField, label: string): Decimal | undefined {
    const column = this.table.columns[field];
    return this.attempt(() => lengthOfCell(cellOf(this.table, this.row, field), label, column?.unit ?? '', this.unit));
  }

  number(field: CardField, label: string): Decimal | undefined {
    const cell = cellOf(this.table, this.row, field);
    return this.attempt(() => {
      if (cell === '') return undefined;
      if (typeof cell === 'object') throw new TradeError('notANumber', label, `is ${cell.error}`, 'put that cell right first');
      return number({ marks: 'noLength' })(typeof cell === 'string' ? cell.replace(/°$/, '') : cell, label);
    });
  }

  /** As `length`, but 0 is an answer (no skive). */
  skive(field: CardField, label: string): Decimal | undefined {
    return cellOf(this.table, this.row, field) === 0 ? new Decimal(0) : this.length(field, label);
  }
}

function endOfSheet(reader: RowReader, end: 'A' | 'B'): Omit<CrimpEnd, 'end' | 'fitting'> {
  const column = (field: EndField) => endColumn(reader.table, field, end);
  const text = (field: EndField) => (column(field) && reader.text(column(field)!)) || undefined;
  const length = (field: EndField, label: string) =>
    column(field) ? reader.length(column(field)!, `${label} ${end}`) : undefined;
  const skive = (field: EndField) => (column(field) ? reader.skive(column(field)!, `skive ${end}`) : undefined);
  const diameter = length('diameter', 'crimp diameter');
  const tolerance = length('tolerance', 'tolerance');
  return {
    ferrule: text('ferrule'),
    die: text('die'),
    dial: text('dial'),
    diameter,
    smallest: tolerance && diameter?.minus(tolerance),
    largest: tolerance && diameter?.plus(tolerance),
    crimpLength: length('crimpLength', 'crimp length'),
    skiveOutside: skive('skiveOutside'),
    skiveInside: skive('skiveInside'),
    insertionDepth: length('insertionDepth', 'insertion depth'),
    angle: column('angle') ? reader.number(column('angle')!, `angle ${end}`)?.toNumber() : undefined,
    source: diameter ? 'job sheet' : undefined,
  };
}

const filled = <T extends object>(fields: T): Partial<T> =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<T>;

/** What the sheet says wins over the catalogue; a cell of the sheet that disagrees is the user's to see on the card. */
function crimpEnd(reader: RowReader, end: 'A' | 'B', hose: string, { lookUp, unit }: CardReading): CrimpEnd {
  const fitting = reader.text(end === 'A' ? 'fittingA' : 'fittingB');
  const own = endOfSheet(reader, end);
  if (!lookUp || fitting === '') return { end, fitting, ...own };
  try {
    return { end, fitting, ...lookUp.crimp(hose, fitting, unit), ...filled(own) };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { end, fitting, ...own, problem: own.diameter ? undefined : error.message };
  }
}

function lengthsOf(reader: RowReader, { unit, step }: CardReading) {
  const overall = reader.length('overall', 'overall length');
  const [shortest, longest] = [reader.length('shortest', 'shortest length'), reader.length('longest', 'longest length')];
  const bore = reader.length('bore', 'bore');
  const limits =
    shortest && longest
      ? { shortest, longest }
      : overall && bore && reader.attempt(() => lengthLimits(overall, bore, unit, usualLengthRule(unit)));
  const wanted = reader.length('cutLength', 'cut length');
  const finished = overall && limits ? { overall, limits } : undefined;
  const cutLength = wanted && reader.attempt(() => benchCut(wanted, step, unit, finished).cutLength);
  return { overall, limits: limits || undefined, cutLength, wanted };
}

/** Rating and what is wrong, by the catalogue; nothing where the lines say too little to look it up. */
function byCatalogue(
  reader: RowReader,
  hose: string,
  [a, b]: readonly [CrimpEnd, CrimpEnd],
  overall: Decimal | undefined,
  { lookUp, unit }: CardReading,
) {
  if (!lookUp || !overall || !a.fitting || !b.fitting) return undefined;
  return reader.attempt(() => lookUp.assembly(hose, a.fitting, b.fitting, overall, unit));
}

function pressureOf(reader: RowReader, found: ReturnType<typeof byCatalogue>, reading: CardReading) {
  const own = reader.number('workingPressure', 'working pressure');
  const { unit } = reader.table.columns.workingPressure ?? { unit: '' };
  if (own) return { value: own, unit: unit === 'mpa' ? 'MPa' : unit || reading.pressureUnit };
  return found?.workingPressure;
}

/** One where the table has no such column; undefined where its cell does not say. */
function quantityOf(reader: RowReader): number | undefined {
  const { table, row } = reader;
  if (!table.columns.quantity) return 1;
  return reader.attempt(() => {
    const quantity = countOfCell(cellOf(table, row, 'quantity'), 'quantity');
    if (quantity === undefined) throw new TradeError('blank', 'quantity', 'is blank', 'fill it in');
    return quantity;
  });
}

function readCard(table: SheetTable<CardField>, row: number, reading: CardReading): BenchCard | undefined {
  const reader = new RowReader(table, row, reading.unit);
  const hose = reader.text('hose');
  if (hose === '') return undefined;
  const quantity = quantityOf(reader);
  if (quantity === 0) return undefined;
  const { overall, limits, cutLength, wanted } = lengthsOf(reader, reading);
  const ends = [crimpEnd(reader, 'A', hose, reading), crimpEnd(reader, 'B', hose, reading)] as const;
  const found = byCatalogue(reader, hose, ends, overall, reading);
  const pressure = pressureOf(reader, found, reading);
  return {
    row: sheetRow(table, row),
    line: reader.text('line') || `row ${sheetRow(table, row)}`,
    label: reader.text('label'),
    assembly: reader.text('assembly'),
    order: reader.text('order'),
    hose,
    quantity: quantity ?? 0,
    unit: reading.unit,
    overall,
    limits,
    cutLength,
    wanted,
    ends,
    twist: reader.number('twist', 'twist angle')?.toNumber(),
    workingPressure: pressure?.value,
    pressureUnit: pressure?.unit ?? reading.pressureUnit,
    guard: reader.text('guard'),
    note: reader.text('note'),
    // What an end has no data for stands with that end.
    problems: [...reader.problems, ...(found?.wrong ?? []).filter(wrong => !wrong.startsWith('no crimp data'))],
  };
}

/**
 * Reads bench cards out of a job table, one a line.
 * @param picked rows of the sheet as it shows them; undefined = every row of the table
 */
export function readCards(
  table: SheetTable<CardField>,
  reading: CardReading,
  picked?: ReadonlySet<number>,
): readonly BenchCard[] {
  return dataRows(table)
    .filter(row => !picked || picked.has(sheetRow(table, row)))
    .flatMap(row => readCard(table, row, reading) ?? []);
}

/** The unit of a job table's lengths, where a heading says so. */
export function cardUnit(table: SheetTable<CardField>): LengthUnit | undefined {
  return unitOfHeading((table.columns.cutLength ?? table.columns.overall)!.unit);
}
