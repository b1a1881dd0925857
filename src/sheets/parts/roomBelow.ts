import { SHEET_ROWS, type Block, type CellPlace } from '../../workbook/a1';

const LEAST = 50;
const SHARE = 0.1;

/**
 * Rows of the range that reads a table: its own and room to append, as far as nothing else stands below; never fewer than it read before.
 * @param below filled cells under the table that are not its own
 * @param before the range that was read before
 */
export function roomBelow(table: Block, below: readonly CellPlace[], before: Block | undefined): number {
  const wanted = table.rows + Math.max(LEAST, Math.ceil(table.rows * SHARE));
  const end = before ? before.row + before.rows - table.row : 0;
  const next = below.reduce((first, { row }) => Math.min(first, row), SHEET_ROWS) - table.row;
  return Math.max(end, Math.min(Math.max(wanted, end), next), table.rows);
}
