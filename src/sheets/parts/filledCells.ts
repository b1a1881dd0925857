import type { Block, CellPlace } from '../../workbook/a1';
import type { RangeContent } from '../../workbook/workbook';

export const isInside = ({ row, column }: CellPlace, block: Block): boolean =>
  row >= block.row && row < block.row + block.rows && column >= block.column && column < block.column + block.columns;

/** The block of cells that a content covers. */
export function blockOfContent({ row, column, values }: RangeContent): Block {
  return { row, column, rows: values.length, columns: values[0]?.length ?? 0 };
}

/** Filled cells of a sheet that lie in `block` and in none of `spared`. */
export function filledCells(content: RangeContent | undefined, block: Block, spared: readonly Block[]): readonly CellPlace[] {
  if (!content) return [];
  return content.values.flatMap((cells, down) =>
    cells.flatMap((value, across) => {
      const cell = { row: content.row + down, column: content.column + across };
      const isFilled = value !== '' || content.formulas[down]![across] !== '';
      return isFilled && isInside(cell, block) && !spared.some(each => isInside(cell, each)) ? [cell] : [];
    }),
  );
}

/** Value of a cell of a sheet by its place; "" outside the content. */
export function valueAt(content: RangeContent | undefined, { row, column }: CellPlace) {
  return content?.values[row - content.row]?.[column - content.column] ?? '';
}

export function formulaAt(content: RangeContent | undefined, { row, column }: CellPlace): string {
  return content?.formulas[row - content.row]?.[column - content.column] ?? '';
}

/** Number format of a cell; `General` outside the content. */
export function formatAt(content: RangeContent | undefined, { row, column }: CellPlace): string {
  return content?.formats[row - content.row]?.[column - content.column] ?? 'General';
}
