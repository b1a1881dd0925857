import type { ColumnRead } from '../table/columnsRead';
import { READING, READING_B } from './columnRoles';
import type { TableView } from './columnsView';

/** The columns of a table that have a heading, with what each was read as; of the readings each column is one. */
export function columnsReadIn({
  table: { headings, block },
  columns,
}: Pick<TableView, 'table' | 'columns'>): readonly ColumnRead[] {
  return headings.flatMap((heading, index): ColumnRead[] => {
    if (heading === '') return [];
    const column = block.column + index;
    const role = Object.entries(columns).find(([, { first, last }]) => column >= first && column <= last)?.[0];
    return [{ column, heading, role: role === 'readings' ? READING : role === 'readingsB' ? READING_B : role }];
  });
}
