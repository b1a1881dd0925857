import { cellAddress, type CellPlace } from '../../workbook/a1';
import { nameOfCell } from '../../cells/sheetCell';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { quotedText } from '../../core/quotedText';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { looksLikeDate } from '../../core/units/sheetDate';
import type { CellValue } from '../../workbook/workbook';
import type { CrimpCells } from './crimpCells';
import type { CellInSheet, CrimpProblem, Sourced } from './crimpRow';
import { CRIMP_END_FIELDS, type CrimpField, type CrimpRole } from './crimpRoles';
import type { CrimpTable } from './crimpTable';
import { cellAdvice } from './toleranceAdvice';
import type { BareLimits } from './limitColumns';

export const OPEN_UNIT = 'the unit of the readings is not known: answer the question about it';

/** Reads the cells of one crimp; the first that cannot be read is its problem. */
export class CrimpRowReader {
  problem: CrimpProblem | undefined;
  readonly notes: string[] = [];
  private readonly end: string;

  constructor(
    private readonly source: CrimpTable,
    readonly crimp: CrimpCells,
    /** Lengths are given in this unit. */
    readonly unit: LengthUnit,
  ) {
    this.end = crimp.end || this.name('end').toUpperCase();
  }

  /** The column of a field: the end's own, else the one for the whole row. */
  private roleOf(field: CrimpField): CrimpRole | undefined {
    const { columns } = this.source;
    const ofEnd = (CRIMP_END_FIELDS as readonly string[]).includes(field);
    const ends = this.end === 'A' || this.end === 'B' ? [this.end] : this.end === '' ? ['A'] : [];
    const roles: CrimpRole[] = ofEnd ? (ends.map(end => `${field}${end}`) as CrimpRole[]) : [];
    return (this.end === '' ? [field, ...roles] : [...roles, field]).find(role => columns[role] !== undefined);
  }

  private placeOf(field: CrimpField): CellPlace | undefined {
    const role = this.roleOf(field);
    return role && { row: this.crimp.row, column: this.source.columns[role]! };
  }

  has(field: CrimpField): boolean {
    return this.roleOf(field) !== undefined;
  }

  /** Of all columns of its table. */
  get headings(): readonly string[] {
    return this.source.table.headings;
  }

  /** Set where its smallest and largest diameter are headed `Min` and `Max` and nothing more. */
  get bareLimits(): BareLimits | undefined {
    const end = /[AB]$/.exec(this.roleOf('smallest') ?? '')?.[0] as 'A' | 'B' | undefined;
    return this.source.bareLimits[end ?? ''];
  }

  name(field: CrimpField): string {
    const role = this.roleOf(field);
    return role ? this.source.reader.name(this.crimp.row, role) : '';
  }

  /** The names that the cells of all its rows hold, in one line. */
  list(field: CrimpField): string {
    const role = this.roleOf(field);
    return role ? this.crimp.rows.map(row => this.source.reader.list(row, role)).join('; ') : '';
  }

  /** "" where the table has no such column. */
  heading(field: CrimpField): string {
    const role = this.roleOf(field);
    return role ? this.source.reader.heading(role) : '';
  }

  /** What a cell shows: merged cells give theirs to all rows they cover. */
  shown(field: CrimpField): CellValue {
    const place = this.placeOf(field);
    return place ? this.source.reader.cells.shown(place.row, place.column) : '';
  }

  cellAt(place: CellPlace): CellInSheet {
    const { cells } = this.source.reader;
    const value = cells.value(place.row, place.column);
    return {
      address: cellAddress(place),
      value: typeof value === 'string' && value.trim() === '' ? '' : value,
      format: cells.format(place.row, place.column),
      isFormula: cells.isComputed(place.row, place.column),
    };
  }

  cell(field: CrimpField): CellInSheet | undefined {
    const place = this.placeOf(field);
    return place && this.cellAt(place);
  }

  /** The cell of a field, where somebody may write into it. */
  writable(field: CrimpField): CellInSheet | undefined {
    const cell = this.cell(field);
    const place = this.placeOf(field);
    const merge = place && this.source.reader.cells.merge(place.row, place.column);
    return cell && !cell.isFormula && (!merge || (merge.row === place.row && merge.rows <= this.crimp.rows.length))
      ? cell
      : undefined;
  }

  private attempt<T>(place: CellPlace, read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.problem ??= { sentence: this.sentence(error), at: cellAddress(place) };
      return undefined;
    }
  }

  private sentence(error: TradeError): string {
    // Another column's unit may be open while that of the readings is known.
    const { unit, questions } = this.source;
    const isOpen = error.code === 'unit' && !unit && questions.some(({ asked }) => asked === 'unit');
    return `${this.crimp.end ? `end ${this.crimp.end}: ` : ''}${isOpen ? OPEN_UNIT : error.message}`;
  }

  /** A diameter, a tolerance, a spread, a step, with where it comes from. */
  length(field: CrimpField, sign: 'any' | 'positive' = 'positive'): Sourced | undefined {
    const role = this.roleOf(field);
    const place = this.placeOf(field);
    if (!role || !place) return undefined;
    const { reader } = this.source;
    const value = this.attempt(place, () => {
      this.refuseUnread(field, reader.cells.value(place.row, place.column));
      const found = reader.measure(place.row, role, sign, { rows: this.crimp.rows.length });
      if (found && looksLikeDate(found.value.toNumber()))
        throw new TradeError(
          'date',
          field,
          `is ${found.value}`,
          'that looks like a date: set the column to text and type it again',
        );
      return found && lengthIn(found, this.unit);
    });
    return value && { value, from: `column ${reader.heading(role)}` };
  }

  private refuseUnread(field: CrimpField, cell: CellValue): void {
    const advice = typeof cell === 'string' ? cellAdvice(field, cell) : undefined;
    if (advice !== undefined)
      throw new TradeError('notANumber', field.replace('Width', ''), `is ${quotedText(cell as string)}`, advice);
  }

  /** A dial, or a limit of dials. */
  digits(field: 'dial' | 'lowest' | 'highest' | 'largestMove'): Sourced | undefined {
    const role = this.roleOf(field);
    const place = this.placeOf(field);
    if (!role || !place) return undefined;
    const { reader } = this.source;
    const value = this.attempt(place, () => reader.number(place.row, role, field, 'any', this.crimp.rows.length));
    return value && { value, from: `column ${reader.heading(role)}` };
  }

  /** Day and time; where they cannot be read, that is noted. */
  moment(): number | undefined {
    const [day, time] = [this.roleOf('date'), this.roleOf('time')];
    const { reader } = this.source;
    try {
      const date = day && reader.moment(this.crimp.row, day, 'date');
      if (date === undefined || !Number.isInteger(date) || !time) return date;
      return date + (timeOf(reader.cells.shown(this.crimp.row, reader.columns[time]!)) ?? 0);
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.notes.push(error.message);
      return undefined;
    }
  }

  /** The readings, as far as they can be read, and why not all of them can. */
  readings(): { readonly readings: readonly (Decimal | undefined)[]; readonly problem: CrimpProblem | undefined } {
    const { readings } = this.crimp;
    const { reader } = this.source;
    const before = this.problem;
    this.problem = undefined;
    const found = readings.map((place, index) => {
      const label = readings.length > 1 ? `reading ${index + 1}` : 'reading';
      return this.attempt(place, () => {
        if (reader.cells.value(place.row, place.column) === 0)
          throw new TradeError('blank', label, 'is blank or zero', 'fill it in');
        const value = reader.measure(place.row, place.role, 'positive', { label });
        if (value && looksLikeDate(value.value.toNumber()))
          throw new TradeError('date', label, `is ${value.value}`, 'that looks like a date');
        if (!value && !this.isBlank()) throw new TradeError('blank', label, 'is blank', 'measure it, or clear the others');
        return value && lengthIn(value, this.unit);
      });
    });
    const problem = this.problem;
    this.problem = before;
    return { readings: found, problem };
  }

  private isBlank(): boolean {
    const { cells } = this.source.reader;
    return this.crimp.readings.every(
      ({ row, column }) => nameOfCell(cells.value(row, column)) === '' && typeof cells.value(row, column) !== 'object',
    );
  }
}

/** The time of day of a cell as a part of the day; undefined where it is none. */
function timeOf(cell: CellValue): number | undefined {
  if (typeof cell === 'number') return cell >= 0 && cell < 1 ? cell : undefined;
  const [, hour, minute, half] =
    (typeof cell === 'string' && /^\s*(\d{1,2})[:.](\d{2})(?::\d{2})?\s*(am|pm)?\s*$/i.exec(cell)) || [];
  if (hour === undefined) return undefined;
  const hours = half ? (Number(hour) % 12) + (half.toLowerCase() === 'pm' ? 12 : 0) : Number(hour);
  return hours < 24 && Number(minute) < 60 ? (hours * 60 + Number(minute)) / 1440 : undefined;
}
