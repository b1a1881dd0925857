import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { columnLetters } from '../../workbook/a1';
import { number } from '../../cells/readers';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { unitOfHeading } from '../table/roles';
import type { CellPlace, CrimpCells } from './crimpCells';
import type { MeasurementRole } from './measurementRoles';
import type { Sourced } from './entrySlot';
import { extraColumn, isExtra, type ExtraField } from './extraColumns';

/** Address of a cell by zero-based numbers. */
export const addressOfCell = ({ row, column }: CellPlace) => `${columnLetters(column)}${row + 1}`;

const LABELS: Partial<Record<MeasurementRole | ExtraField, string>> = {
  largestSpread: 'largest spread',
  step: 'change per digit',
  largestMove: 'largest move',
  smallest: 'smallest diameter',
  largest: 'largest diameter',
};

/** Reads the cells of one crimp; the first that cannot be read is the slot's problem. */
export class SlotReader {
  problem: string | undefined;

  constructor(
    private readonly used: RangeContent,
    private readonly table: FoundTable,
    private readonly crimp: CrimpCells,
    private readonly end: string,
    readonly unit: LengthUnit,
  ) {}

  private placeOf(field: MeasurementRole | ExtraField): CellPlace | undefined {
    const place = this.crimp.cells[field as MeasurementRole];
    if (place || !isExtra(field)) return place;
    const column = extraColumn(this.table, field, this.end);
    return column === undefined ? undefined : { row: this.crimp.row, column };
  }

  /** The cell of a role; "" where the table has no such column. */
  cell(field: MeasurementRole): CellValue {
    const place = this.crimp.cells[field];
    return place ? cellOf(this.used, place.row, place.column) : '';
  }

  text(field: MeasurementRole): string {
    const cell = this.cell(field);
    return typeof cell === 'object' ? '' : String(cell).trim();
  }

  /** The cell of another column that a row may have. */
  extra(field: ExtraField): CellValue {
    const column = extraColumn(this.table, field, this.end);
    // `Pos.` may number the lines of a job, but where it numbers the readings of a crimp it names none.
    if (column === undefined || column === this.crimp.cells.readingNumber?.column) return '';
    return cellOf(this.used, this.crimp.row, column);
  }

  extraText(field: ExtraField): string {
    const cell = this.extra(field);
    return typeof cell === 'object' ? '' : String(cell).trim();
  }

  isFormula({ row, column }: CellPlace): boolean {
    return (this.used.formulas[row - this.used.row]?.[column - this.used.column] ?? '') !== '';
  }

  private read(place: CellPlace, label: string, isLength: boolean, sign: 'any' | 'positive'): Decimal | undefined {
    const cell = cellOf(this.used, place.row, place.column);
    if (cell === '' || (typeof cell === 'string' && cell.trim() === '')) return undefined;
    try {
      if (typeof cell === 'object') throw new TradeError('notANumber', label, `is ${cell.error}`, 'put that cell right first');
      const value = number({
        sign,
        mayBeDate: isLength,
        zeroIsBlank: sign === 'positive',
        marks: isLength ? 'inches' : 'noLength',
      })(cell, label);
      const heading = this.table.headings[place.column - this.table.block.column] ?? '';
      return isLength ? convertLength(value, unitOfHeading(heading) ?? this.unit, this.unit) : value;
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.problem ??= error.message;
      return undefined;
    }
  }

  private sourced(field: MeasurementRole | ExtraField, isLength: boolean, sign: 'any' | 'positive'): Sourced | undefined {
    const place = this.placeOf(field);
    const value = place && this.read(place, LABELS[field] ?? field, isLength, sign);
    const heading = place && this.table.headings[place.column - this.table.block.column];
    return value && { value, from: `column ${heading}` };
  }

  /** A diameter, tolerance or spread. */
  length(field: 'target' | 'tolerance' | 'smallest' | 'largest' | 'largestSpread'): Sourced | undefined {
    return this.sourced(field, true, 'positive');
  }

  /** A dial, or a limit of dials. */
  digits(field: 'dial' | 'lowest' | 'highest' | 'largestMove'): Sourced | undefined {
    return this.sourced(field, false, 'any');
  }

  /** Change of diameter per digit: its sign says which way. */
  step(): Sourced | undefined {
    return this.sourced('step', true, 'any');
  }
}
