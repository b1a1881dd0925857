import { invert } from '../../../src/core/cutplan/invert';
import { Work } from '../../../src/core/cutplan/work';
import { seeded } from './bruteForce';

/** Inverse of a matrix given by rows. */
function inverseOf(rows: readonly (readonly number[])[]): number[] | undefined {
  const inverse = new Float64Array(rows.length ** 2);
  return invert(Float64Array.from(rows.flat()), inverse, rows.length, new Work(Infinity)) ? [...inverse] : undefined;
}

test('a matrix times its inverse is the unit matrix (definition), rows exchanged where a pivot is 0', () => {
  expect(inverseOf([[0, 2], [4, 0]])).toEqual([0, 0.25, 0.5, 0]); // prettier-ignore
  const random = seeded(7);
  for (const size of [1, 3, 8, 20]) {
    const rows = Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (__, j) => (i === j ? random(1, 9) : random(0, 3) === 0 ? random(-4, 4) : 0)),
    );
    const inverse = inverseOf(rows);
    if (!inverse) continue;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) {
        const product = rows[i]!.reduce((sum, entry, k) => sum + entry * inverse[k * size + j]!, 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 9);
      }
    }
  }
});

test('a singular matrix has none', () => {
  expect(inverseOf([[1, 2], [2, 4]])).toBeUndefined(); // prettier-ignore
});
