import type { Work } from './work';

// Named here, since a script host may make every look at a global slow.
const { abs } = Math;

const SMALLEST_PIVOT = 1e-11;

/** Exchanges two rows of a square matrix and divides the one that comes up by the pivot. */
function exchange(matrix: Float64Array, size: number, row: number, pivotRow: number, pivot: number): void {
  for (let k = 0; k < size; k++) {
    const up = matrix[pivotRow * size + k]!;
    matrix[pivotRow * size + k] = matrix[row * size + k]!;
    matrix[row * size + k] = up / pivot;
  }
}

/** Columns of a row that are not 0. */
function filledIn(matrix: Float64Array, size: number, row: number, from: number, filled: Int32Array): number {
  let count = 0;
  for (let k = from; k < size; k++) if (matrix[row * size + k] !== 0) filled[count++] = k;
  return count;
}

/**
 * Inverts a square matrix (Gauss and Jordan, largest pivot of the column), row by row in one array. Most entries of a basis are zero: only
 * the columns that a pivot row fills are touched.
 * @param matrix is used up
 * @param inverse gets the result
 * @returns false where the matrix is singular or the work was stopped
 */
export function invert(matrix: Float64Array, inverse: Float64Array, size: number, work: Work): boolean {
  inverse.fill(0);
  for (let j = 0; j < size; j++) inverse[j * size + j] = 1;
  const left = new Int32Array(size);
  const right = new Int32Array(size);
  for (let j = 0; j < size; j++) {
    let pivotRow = j;
    for (let i = j + 1; i < size; i++) if (abs(matrix[i * size + j]!) > abs(matrix[pivotRow * size + j]!)) pivotRow = i;
    const pivot = matrix[pivotRow * size + j]!;
    if (abs(pivot) < SMALLEST_PIVOT || work.stopped) return false;
    // The exchanges land in the inverse by themselves.
    exchange(matrix, size, j, pivotRow, pivot);
    exchange(inverse, size, j, pivotRow, pivot);
    const lefts = filledIn(matrix, size, j, j, left);
    const rights = filledIn(inverse, size, j, 0, right);
    for (let i = 0; i < size; i++) {
      const factor = matrix[i * size + j]!;
      if (i === j || factor === 0) continue;
      for (let f = 0; f < lefts; f++) matrix[i * size + left[f]!]! -= factor * matrix[j * size + left[f]!]!;
      for (let f = 0; f < rights; f++) inverse[i * size + right[f]!]! -= factor * inverse[j * size + right[f]!]!;
    }
    work.spendFlops(size * (lefts + rights));
  }
  return true;
}
