import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { unitOfHeading } from '../table/roles';
import type { MeasurementColumns } from './measurementRoles';

/** Crimp diameters below this are in inches: hydraulic crimps measure from about 8 mm, and no more than about 4 in. */
const INCHES_BELOW = 6;

/** The unit of the diameters: as the headings say, else as the size of the first reading suggests. */
export function measurementUnit(used: RangeContent, table: FoundTable, columns: MeasurementColumns): LengthUnit {
  const diameters = [columns.readings, columns.readingsB, columns.target, columns.tolerance].flatMap(each => each ?? []);
  const named = diameters.map(column => unitOfHeading(table.headings[column - table.block.column] ?? '')).find(Boolean);
  if (named) return named;
  for (const column of diameters) {
    for (let row = table.block.row + 1; row < table.block.row + table.block.rows; row++) {
      const value = cellOf(used, row, column);
      if (typeof value === 'number' && value > 0) return value < INCHES_BELOW ? 'in' : 'mm';
    }
  }
  return 'mm';
}
