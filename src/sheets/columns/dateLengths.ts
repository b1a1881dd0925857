import { isDateFormat } from '../../core/units/sheetDate';
import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { Role } from './columnRoles';
import type { TableView } from './columnsView';

const LENGTHS: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance', 'readings', 'target', 'tolerance'];
const TYPED: readonly Role[] = ['overall', 'cutOffA', 'cutOffB', 'allowance'];

type Read = Pick<TableView, 'cells' | 'table' | 'columns'>;

const rowsOf = ({ table: { block } }: Read) => Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);

/** Cells of length columns that the sheet has turned into dates (3/8 typed into a plain cell), as addresses. */
export function datesAmongLengths(view: Read): string[] {
  const { cells, columns } = view;
  return LENGTHS.flatMap(role => columns[role] ?? []).flatMap(({ first, last }) =>
    Array.from({ length: last - first + 1 }, (_, i) => first + i).flatMap(column =>
      rowsOf(view).flatMap(row =>
        typeof cells.value(row, column) === 'number' && isDateFormat(cells.format(row, column))
          ? addressOf({ row, column, rows: 1, columns: 1 })
          : [],
      ),
    ),
  );
}

/** Sets the typed length columns to text, so that inch fractions stay as typed; columns that hold formulas are left alone. */
export function textFormatChanges(view: Read): Change[] {
  const { cells, table, columns } = view;
  return TYPED.flatMap(role => {
    const column = columns[role]?.first;
    if (column === undefined || rowsOf(view).some(row => cells.formula(row, column) !== '')) return [];
    const address = addressOf({ row: table.block.row + 1, column, rows: table.block.rows - 1, columns: 1 });
    return [{ kind: 'format', at: { sheet: table.sheet, address }, numberFormat: '@' } as const];
  });
}
