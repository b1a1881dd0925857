import { addressOf } from '../../workbook/a1';
import type { Change, RangeContent } from '../../workbook/workbook';
import type { FoundTable } from './findTable';
import type { Columns } from './proposeColumns';
import type { Role } from './roles';

const LENGTHS: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance', 'readings', 'target', 'tolerance'];
const TYPED: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance'];

/** Whether a number format shows dates: a day or year code outside quotes and brackets. */
export function isDateFormat(format: string): boolean {
  return /[dy]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, '').replace(/General|Standard/gi, ''));
}

/** Cells of length columns that the sheet has turned into dates (3/8 typed into a plain cell), as addresses. */
export function datesAmongLengths(used: RangeContent, { block }: FoundTable, columns: Columns): string[] {
  const spans = LENGTHS.flatMap(role => columns[role] ?? []);
  return spans.flatMap(({ first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i).flatMap(column =>
      Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).flatMap(row => {
        const value = used.values[row - used.row]?.[column - used.column];
        const format = used.formats[row - used.row]?.[column - used.column] ?? '';
        return typeof value === 'number' && isDateFormat(format) ? addressOf({ row, column, rows: 1, columns: 1 }) : [];
      }),
    ),
  );
}

/** Sets the typed length columns to text, so that inch fractions stay as typed; columns that hold formulas are left alone. */
export function textFormatChanges(used: RangeContent, { sheet, block }: FoundTable, columns: Columns): Change[] {
  return TYPED.flatMap(role => {
    const span = columns[role];
    if (!span) return [];
    const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);
    if (rows.some(row => (used.formulas[row - used.row]?.[span.first - used.column] ?? '') !== '')) return [];
    const address = addressOf({ row: block.row + 1, column: span.first, rows: block.rows - 1, columns: 1 });
    return [{ kind: 'format', at: { sheet, address }, numberFormat: '@' } as const];
  });
}
