import type { Decimal } from '../../core/units/decimal';
import { convertLength, type LengthUnit } from '../../core/units/lengthUnit';
import { TradeError } from '../../core/tradeError';
import { readDiameter, readTolerance } from '../../cells/crimpReaders';
import { number } from '../../cells/readers';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import { isDateFormat } from '../../core/units/sheetDate';
import { cellOf, type FoundTable } from '../table/findTable';
import { unitOfHeading } from '../table/roles';
import type { CellPlace, CrimpCells } from './crimpCells';
import { crimpDay } from './crimpDay';
import type { MeasurementRole } from './measurementRoles';

const readDial = number({ marks: 'noLength', hint: 'enter the dial setting', like: '412' });

const LABELS: Partial<Record<MeasurementRole, string>> = {
  target: 'target',
  tolerance: 'tolerance',
  smallest: 'smallest diameter',
  largest: 'largest diameter',
};

/** Reads the cells of one crimp and remembers the last one looked at, for a problem's jump. */
export class CrimpReader {
  at: CellPlace;

  constructor(
    private readonly used: RangeContent,
    private readonly table: FoundTable,
    private readonly crimp: CrimpCells,
    private readonly unit: LengthUnit,
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
    return convertLength(read(value, label), unitOfHeading(heading) ?? this.unit, this.unit);
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
