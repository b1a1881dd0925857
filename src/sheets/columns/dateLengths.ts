import { isDateFormat } from '../../core/units/sheetDate';
import { addressOf, cellAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { Role } from './columnRoles';
import { tableRowsOf, type ReadTable } from './ownColumns';

const LENGTHS: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance', 'readings', 'target', 'tolerance'];
const TYPED: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance'];

/** Cells of length columns that the sheet has turned into dates (3/8 typed into a plain cell), as addresses. */
export function datesAmongLengths(view: ReadTable): string[] {
  const { cells, columns } = view;
  return LENGTHS.flatMap(role => columns[role] ?? []).flatMap(({ first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i).flatMap(column =>
      tableRowsOf(view).flatMap(row =>
        typeof cells.value(row, column) === 'number' && isDateFormat(cells.format(row, column))
          ? cellAddress({ row, column })
          : [],
      ),
    ),
  );
}

/** Sets the typed length columns to text, so that inch fractions stay as typed; columns that hold formulas are left alone. */
export function textFormatChanges(view: ReadTable): Change[] {
  const { cells, table, columns } = view;
  return TYPED.flatMap(role => {
    const column = columns[role]?.first;
    if (column === undefined || tableRowsOf(view).some(row => cells.formula(row, column) !== '')) return [];
    const address = addressOf({ row: table.block.row + 1, column, rows: table.block.rows - 1, columns: 1 });
    return [{ kind: 'format', at: { sheet: table.sheet, address }, numberFormat: '@' } as const];
  });
}
