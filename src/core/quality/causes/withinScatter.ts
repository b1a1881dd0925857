import { leastSquares } from './leastSquares';

/** Scatter inside the combinations and its degrees of freedom; NaN without any. */
export interface WithinScatter {
  readonly scatter: number;
  readonly df: number;
}

/** Values less the mean of their group. */
function centred(values: Float64Array, groups: readonly number[]): Float64Array {
  const sums = new Map<number, { count: number; total: number }>();
  groups.forEach((group, row) => {
    const { count, total } = sums.get(group) ?? { count: 0, total: 0 };
    sums.set(group, { count: count + 1, total: total + values[row]! });
  });
  return values.map((value, row) => value - sums.get(groups[row]!)!.total / sums.get(groups[row]!)!.count);
}

/**
 * What is left when every combination has a level of its own besides the columns.
 * @param groups combination of each row
 */
export function withinScatter(columns: readonly Float64Array[], values: Float64Array, groups: readonly number[]): WithinScatter {
  const { residualSquares, rank } = leastSquares(
    columns.map(column => centred(column, groups)),
    centred(values, groups),
  );
  const df = values.length - new Set(groups).size - rank;
  return { scatter: df > 0 ? Math.sqrt(residualSquares / df) : NaN, df };
}
