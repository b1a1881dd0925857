import type { CellValue } from './workbook';

/** What a cell holds, an error value as its code. */
export const plainValue = (value: CellValue): string | number | boolean => (typeof value === 'object' ? value.error : value);

/** The same as text. */
export const cellWords = (value: CellValue): string => String(plainValue(value));
