import { BasisFactors } from '../../../src/core/cutplan/basisFactors';
import { SparseColumns } from '../../../src/core/cutplan/sparseColumns';
import { Work } from '../../../src/core/cutplan/work';
import { seeded } from './bruteForce';

/** Columns of a square matrix as dense lists. */
type Columns = readonly (readonly number[])[];

function sparse(columns: Columns): SparseColumns {
  const list = new SparseColumns();
  for (const column of columns) {
    column.forEach((entry, row) => entry !== 0 && list.put(row, entry));
    list.close();
  }
  return list;
}

const times = (columns: Columns, x: ArrayLike<number>) =>
  columns[0]!.map((_, row) => columns.reduce((sum, column, k) => sum + column[row]! * x[k]!, 0));

const timesTransposed = (columns: Columns, y: ArrayLike<number>) =>
  columns.map(column => column.reduce((sum, entry, row) => sum + entry * y[row]!, 0));

/** Random columns with few entries, as patterns have them; every sixth a unit column. */
function randomColumns(size: number, random: (low: number, high: number) => number): Columns {
  return Array.from({ length: size }, (_, j) => {
    const column = new Array<number>(size).fill(0);
    column[j] = random(1, 4);
    if (j % 6 > 0) for (let k = 0; k < 3; k++) column[random(0, size - 1)] = random(-1, 5);
    return column;
  });
}

test('what is solved solves the equations (definition), before and after columns are exchanged', () => {
  const random = seeded(11);
  let solved = 0;
  for (let round = 0; round < 60; round++) {
    const size = [1, 2, 5, 20, 60][round % 5]!;
    const all = [...randomColumns(size, random), ...randomColumns(size, random)];
    const list = sparse(all);
    const factors = new BasisFactors(size, new Work(Infinity));
    const basis = Int32Array.from({ length: size }, (_, k) => k);
    if (!factors.factor(list, basis)) continue;
    for (let exchange = 0; exchange < 12; exchange++) {
      const columns = [...basis].map(column => all[column]!);
      const a = Float64Array.from({ length: size }, () => random(-9, 9));
      const [x, y] = [a.slice(), a.slice()];
      factors.solve(x);
      factors.solveTransposed(y);
      const isOff = (value: number, at: number) => !(Math.abs(value - a[at]!) < 5e-7);
      expect([...times(columns, x)].filter(isOff)).toEqual([]);
      expect([...timesTransposed(columns, y)].filter(isOff)).toEqual([]);
      solved++;
      const direction = new Float64Array(size);
      const entering = size + random(0, size - 1);
      list.takeOff(entering, -1, direction);
      factors.solve(direction);
      const place = direction.findIndex(entry => Math.abs(entry) > 0.2);
      if (place < 0 || basis.includes(entering)) break;
      factors.exchange(place, direction);
      basis[place] = entering;
    }
  }
  expect(solved).toBeGreaterThan(150);
});

test('a singular basis has no factors', () => {
  const factors = new BasisFactors(3, new Work(Infinity));
  expect(factors.factor(sparse([[1, 2, 0], [2, 4, 0], [0, 0, 1]]), Int32Array.from([0, 1, 2]))).toBe(false); // prettier-ignore
  expect(factors.factor(sparse([[1, 0, 1], [1, 0, 2], [1, 0, 3]]), Int32Array.from([0, 1, 2]))).toBe(false); // prettier-ignore
});
