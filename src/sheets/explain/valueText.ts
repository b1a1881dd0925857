import type { CellValue } from '../../workbook/workbook';

/** A cell's value in short: a number with the digits that matter, an error by its sentence where there is one. */
export function valueText(value: CellValue): string {
  if (typeof value === 'object') return value.sentence || value.error;
  return typeof value === 'number' ? String(Number(value.toPrecision(8))) : String(value);
}
