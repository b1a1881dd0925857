import type { FoundTable } from '../table/findTables';

/**
 * How added columns are written. Each call of a function crosses a border between processes, and thousands of them may end in #BUSY!
 * (github.com/OfficeDev/office-js/issues/901 and 4654; github.com/OfficeDev/Excel-Custom-Functions/issues/233).
 * - `cell`: a formula in every cell;
 * - `row`: a formula a row and function, which fills the columns of its result;
 * - `column`: one formula a function, which fills the columns of its result over all rows.
 */
export type FormulaForm = 'cell' | 'row' | 'column';

/** Above this many rows one formula serves all rows, unless somebody chooses otherwise. */
export const MANY_ROWS = 500;

/** The forms that fill several cells by one formula, and why a table may have none: Excel refuses them in its tables (#SPILL!). */
export const canSpill = ({ hostTable, block }: Pick<FoundTable, 'hostTable' | 'block'>): boolean => !hostTable && block.rows > 1;

/** The form that is taken where nobody has chosen. */
function usualForm(table: Pick<FoundTable, 'hostTable' | 'block'>, hasOthersBetween: boolean): FormulaForm {
  if (!canSpill(table)) return 'cell';
  // One formula for all rows would answer in rows of totals and remarks, too.
  return table.block.rows - 1 > MANY_ROWS && !hasOthersBetween ? 'column' : 'row';
}

/** The form of a table: the chosen one where the table can have it. */
export const formFor = (
  table: Pick<FoundTable, 'hostTable' | 'block'>,
  hasOthersBetween: boolean,
  chosen?: FormulaForm,
): FormulaForm => (canSpill(table) ? (chosen ?? usualForm(table, hasOthersBetween)) : 'cell');
