import { type Block, cellAddress, type CellPlace } from '../../workbook/a1';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { formulaAt, valueAt } from './filledCells';

/** A formula that fills more cells than its own. */
export interface Spilled {
  readonly from: CellPlace;
  /** All cells it fills, its own first. */
  readonly block: Block;
}

const isTyped = (content: RangeContent, cell: CellPlace) => formulaAt(content, cell) === '' && valueAt(content, cell) !== '';
const right = ({ row, column }: CellPlace, by = 1): CellPlace => ({ row, column: column + by });
const below = ({ row, column }: CellPlace, by = 1): CellPlace => ({ row: row + by, column });

/** Formulas that may fill cells beside or below them; of a column of formulas the first only is asked about. */
function candidates(content: RangeContent): readonly CellPlace[] {
  return content.formulas.flatMap((cells, down) =>
    cells.flatMap((formula, across) => {
      const cell = { row: content.row + down, column: content.column + across };
      if (formula === '') return [];
      const isFirst = formulaAt(content, below(cell, -1)) === '';
      return isTyped(content, below(cell)) || (isFirst && isTyped(content, right(cell))) ? [cell] : [];
    }),
  );
}

/** How many cells in a row a formula fills, its own among them: doubled until too many, then halved. */
async function length(isOf: (by: number) => Promise<boolean>): Promise<number> {
  let [known, beyond] = [0, 1];
  while (await isOf(beyond)) [known, beyond] = [beyond, beyond * 2];
  while (beyond - known > 1) {
    const middle = Math.floor((known + beyond) / 2);
    if (await isOf(middle)) known = middle;
    else beyond = middle;
  }
  return known + 1;
}

/** The formulas of a sheet that fill more cells than their own: what they fill are no values of anyone's. */
export async function spilledBlocks(workbook: Workbook, content: RangeContent | undefined): Promise<readonly Spilled[]> {
  if (!content) return [];
  const found: Spilled[] = [];
  for (const from of candidates(content)) {
    const own = cellAddress(from);
    const isOf = async (cell: CellPlace) => {
      if (formulaAt(content, cell) !== '') return false;
      const address = cellAddress(cell);
      return (await workbook.spillParent({ sheet: content.sheet, address }))?.address === own;
    };
    const rows = await length(by => isOf(below(from, by)));
    const columns = await length(by => isOf(right(from, by)));
    if (rows > 1 || columns > 1) found.push({ from, block: { ...from, rows, columns } });
  }
  return found;
}
