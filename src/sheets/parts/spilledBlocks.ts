import { addressOf, type Block } from '../../workbook/a1';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { formulaAt, valueAt, type Cell } from './filledCells';

/** A formula that fills more cells than its own. */
export interface Spilled {
  readonly from: Cell;
  /** All cells it fills, its own first. */
  readonly block: Block;
}

const isFilled = (content: RangeContent, cell: Cell) => formulaAt(content, cell) === '' && valueAt(content, cell) !== '';
const right = ({ row, column }: Cell, by = 1): Cell => ({ row, column: column + by });
const below = ({ row, column }: Cell, by = 1): Cell => ({ row: row + by, column });

/** Formulas that may fill cells beside or below them; of a column of formulas the first only is asked about. */
function candidates(content: RangeContent): readonly Cell[] {
  return content.formulas.flatMap((cells, down) =>
    cells.flatMap((formula, across) => {
      const cell = { row: content.row + down, column: content.column + across };
      if (formula === '') return [];
      const isFirst = formulaAt(content, below(cell, -1)) === '';
      return isFilled(content, below(cell)) || (isFirst && isFilled(content, right(cell))) ? [cell] : [];
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
    const own = addressOf({ ...from, rows: 1, columns: 1 });
    const isOf = async (cell: Cell) => {
      if (formulaAt(content, cell) !== '') return false;
      const address = addressOf({ ...cell, rows: 1, columns: 1 });
      return (await workbook.spillParent({ sheet: content.sheet, address }))?.address === own;
    };
    const rows = await length(by => isOf(below(from, by)));
    const columns = await length(by => isOf(right(from, by)));
    if (rows > 1 || columns > 1) found.push({ from, block: { ...from, rows, columns } });
  }
  return found;
}
