import { statedSpread } from '../crimps/statedSpread';
import type { OwnColumn, ReadTable } from './ownColumns';

/** Whether formulas of a column state largest spreads, so that each holds for its own pair only. */
export const goesByPair = ({ cells }: ReadTable, { column, filled }: OwnColumn): boolean =>
  filled.some(row => statedSpread(cells.formula(row, column)) !== undefined);

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
