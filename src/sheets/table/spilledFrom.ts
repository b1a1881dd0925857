import { spilledResult } from '../../workbook/spilledResult';
import type { CellValue, RangeContent } from '../../workbook/workbook';
import type { CellPlace } from '../../workbook/a1';

/** What to do about a formula that Excel refuses to spill. */
export const SPILL_SENTENCE = 'the cells that this formula fills are not empty: clear or move what stands beside or below it';

/** The commonest formulas fill one cell: they need no closer look. */
const ONE_CELL = /^=\s*@?\s*INDEX\(.*,\s*1\s*,\s*\d+\s*\)\s*$/i;

const isError = (value: CellValue | undefined) => typeof value === 'object';

/**
 * Which cells are filled by a formula of ours that stands in another one, by `row column`. A formula that shows #SPILL! fills none; one that
 * failed as a whole leaves what is typed beside it alone.
 */
export function spilledFrom({ row: top, column: left, values, formulas }: RangeContent): ReadonlyMap<string, CellPlace> {
  const found = new Map<string, CellPlace>();
  formulas.forEach((line, r) =>
    line.forEach((formula, c) => {
      const result = formula === '' || ONE_CELL.test(formula) ? undefined : spilledResult(formula);
      const own = values[r]![c]!;
      if (!result || (result.rows === 1 && result.columns.length === 1) || (typeof own === 'object' && own.error === '#SPILL!'))
        return;
      for (let down = 0; down < result.rows && r + down < values.length; down += 1) {
        for (let across = 0; across < result.columns.length; across += 1) {
          const value = values[r + down]![c + across];
          const isOwn = down === 0 && across === 0;
          if (isOwn || value === undefined || formulas[r + down]![c + across] !== '') continue;
          if (isError(own) && value !== '' && !isError(value) && down === 0) continue;
          found.set(`${top + r + down} ${left + c + across}`, { row: top + r, column: left + c });
        }
      }
    }),
  );
  return found;
}
