import type { RawCell } from '../../core/catalogue/rawTable';
import type { CellValue } from '../../workbook/workbook';

/** A cell of the workbook as the catalogue reads it. */
export const rawCell = (value: CellValue): RawCell =>
  value === '' ? null : typeof value === 'object' ? { error: value.error } : value;
