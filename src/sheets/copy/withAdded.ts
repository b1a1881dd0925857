import type { CopiedCell, CopiedSheet } from '../../workbook/copiedWorkbook';
import { blankCell } from './copiedCell';

/** A sheet of the copy with more cells, or with others in their place; it grows where they lie outside. Formulas stay. */
export function withAdded(
  sheet: CopiedSheet,
  added: readonly { readonly row: number; readonly column: number; readonly cell: CopiedCell }[],
): CopiedSheet {
  if (added.length === 0) return sheet;
  const [first, left] = [
    Math.min(sheet.row, ...added.map(({ row }) => row)),
    Math.min(sheet.column, ...added.map(({ column }) => column)),
  ];
  const rows = Math.max(sheet.row + sheet.cells.length, ...added.map(({ row }) => row + 1)) - first;
  const columns = Math.max(sheet.column + (sheet.cells[0]?.length ?? 0), ...added.map(({ column }) => column + 1)) - left;
  const cells = Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (__, c) => sheet.cells[first + r - sheet.row]?.[left + c - sheet.column] ?? blankCell()),
  );
  for (const { row, column, cell } of added) {
    const there = cells[row - first]![column - left]!;
    if (there.formula === undefined)
      cells[row - first]![column - left] = { ...cell, format: cell.format === 'General' ? there.format : cell.format };
  }
  return { ...sheet, row: first, column: left, cells };
}
