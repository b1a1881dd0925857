import { functionCalls } from '../../workbook/functionCall';
import type { OwnColumn, ReadTable } from './ownColumns';

/** Which argument of a function of ours is the largest spread. */
const ARGUMENT: Readonly<Record<string, number>> = { CRIMPCHECK: 4, CRIMPDETAIL: 3 };

/** Whether a verdict's formula states the largest spread of its pair as a number. */
function statesSpread(formula: string): boolean {
  return functionCalls(formula).some(({ id, arguments: given }) => {
    const spread = given[ARGUMENT[id] ?? -1];
    return spread?.kind === 'constant' || (spread?.kind === 'expression' && /,\d+(?:\.\d+)?,/.test(spread.text));
  });
}

/** Whether formulas of a column state largest spreads, so that each holds for its own pair only. */
export const goesByPair = ({ cells }: ReadTable, { column, filled }: OwnColumn): boolean =>
  filled.some(row => statesSpread(cells.formula(row, column)));

/** The row whose formula goes on in another row: the nearest one above; where it must be of the same pair and there is none, undefined. */
export function rowToGoOn(
  { cells, columns }: ReadTable,
  filled: readonly number[],
  row: number,
  isByPair: boolean,
): number | undefined {
  const above = filled.filter(each => each < row);
  if (!isByPair) return above.at(-1) ?? filled[0];
  const named = [columns.hose, columns.fittingA, columns.fittingB].flatMap(each => (each ? [each.first] : []));
  const isSame = (each: number) => named.every(at => cells.shown(each, at) === cells.shown(row, at));
  return above.filter(isSame).at(-1) ?? filled.find(isSame);
}
