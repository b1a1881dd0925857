import { columnLetters } from '../../workbook/a1';
import { spilledResult } from '../../workbook/spilledResult';
import { plainHeading } from '../table/heading';
import type { TableView } from './columnsView';

const OURS = /(?:_xldudf_)?\bHOSE[._][A-Z0-9]+\(/i;

/** A table, its cells, and what its columns are. */
export type ReadTable = Pick<TableView, 'cells' | 'table' | 'columns'>;

/** A column of a table that our functions fill. */
export interface OwnColumn {
  /** Zero-based on the sheet. */
  readonly column: number;
  readonly heading: string;
  /** Rows that hold a formula of ours; none where formulas in a column left of it fill it. */
  readonly filled: readonly number[];
}

/** Columns of a table, zero-based on the sheet. */
export const tableColumns = ({ table: { block } }: ReadTable) =>
  Array.from({ length: block.columns }, (_, i) => block.column + i);

/** Rows below the headings, zero-based on the sheet. */
export const tableRowsOf = ({ table: { block } }: ReadTable) =>
  Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i);

/** Columns that the formulas of others fill, sideways. */
function filledBeside({ cells }: ReadTable, column: number, filled: readonly number[]): number[] {
  const widths = filled.map(row => spilledResult(cells.formula(row, column))?.columns.length ?? 1);
  return Array.from({ length: Math.max(1, ...widths) - 1 }, (_, i) => column + 1 + i);
}

/** The columns of a table that formulas with functions of ours fill, from their own cells or from a column beside them. */
export function ownColumns(view: ReadTable): readonly OwnColumn[] {
  const { cells, table } = view;
  const columns = tableColumns(view);
  const rows = tableRowsOf(view);
  const withFormulas = new Map(
    columns.map(column => [column, rows.filter(row => OURS.test(cells.formula(row, column)))] as const),
  );
  const beside = new Set([...withFormulas].flatMap(([column, filled]) => filledBeside(view, column, filled)));
  return columns.flatMap((column): OwnColumn[] => {
    const filled = withFormulas.get(column)!;
    const isFilledBeside = beside.has(column) && rows.some(row => cells.filledBy(row, column) !== undefined);
    if (filled.length === 0 && !isFilledBeside) return [];
    const heading = table.headings[column - table.block.column] || columnLetters(column);
    return [{ column, heading, filled }];
  });
}

/** The column that already is what a heading says, where our functions fill it. */
export function ownColumnNamed(view: ReadTable, heading: string): OwnColumn | undefined {
  return ownColumns(view).find(own => plainHeading(own.heading) === plainHeading(heading));
}
