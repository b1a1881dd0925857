/** A fit by plain least squares; columns that depend on earlier ones are left out and have the coefficient 0. */
export interface LeastSquares {
  readonly coefficients: readonly number[];
  /** Columns that were not left out. */
  readonly rank: number;
  /** Sum of squares that is left. */
  readonly residualSquares: number;
  /** w'(X'X)⁻¹w: variance of a weighted sum of the coefficients, for a scatter of 1. */
  readonly unitVariance: (weights: readonly number[]) => number;
}

const DEPENDENT = 1e-9;

function dot(a: Float64Array, b: Float64Array): number {
  let total = 0;
  for (let index = 0; index < a.length; index++) total += a[index]! * b[index]!;
  return total;
}

/** Solves triangle · x = right, row by row. */
function forward(triangle: readonly (readonly number[])[], right: readonly number[]): number[] {
  const found: number[] = [];
  triangle.forEach((row, index) => {
    const known = found.reduce((total, value, column) => total + row[column]! * value, 0);
    found.push((right[index]! - known) / row[index]!);
  });
  return found;
}

/**
 * @param columns of the model, of the height of `values`
 * @param values to be explained
 */
export function leastSquares(columns: readonly Float64Array[], values: Float64Array): LeastSquares {
  const kept: number[] = [];
  const triangle: number[][] = [];
  columns.forEach((column, number) => {
    const row = forward(
      triangle,
      kept.map(each => dot(column, columns[each]!)),
    );
    const square = dot(column, column);
    const rest = row.reduce((left, each) => left - each ** 2, square);
    if (rest < DEPENDENT * (square + DEPENDENT)) return;
    triangle.push([...row, Math.sqrt(rest)]);
    kept.push(number);
  });

  const projected = forward(
    triangle,
    kept.map(each => dot(columns[each]!, values)),
  );
  const coefficients = columns.map(() => 0);
  for (let index = kept.length - 1; index >= 0; index--) {
    let value = projected[index]!;
    for (let later = index + 1; later < kept.length; later++) value -= triangle[later]![index]! * coefficients[kept[later]!]!;
    coefficients[kept[index]!] = value / triangle[index]![index]!;
  }
  let residualSquares = 0;
  values.forEach((value, row) => {
    residualSquares += columns.reduce((left, column, number) => left - coefficients[number]! * column[row]!, value) ** 2;
  });
  const unitVariance = (weights: readonly number[]) =>
    forward(
      triangle,
      kept.map(each => weights[each]!),
    ).reduce((total, part) => total + part ** 2, 0);
  return { coefficients, rank: kept.length, residualSquares, unitVariance };
}
