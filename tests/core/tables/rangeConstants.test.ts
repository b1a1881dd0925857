import { normalCdf } from '../../../src/core/quality/normalCdf';
import { RANGE_CONSTANTS } from '../../../src/core/tables/rangeConstants';

const STEP = 0.02;
const REACH = 8;
const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/** Sum over a fine grid: for functions that vanish smoothly at both ends it is exact to many digits (Euler, Maclaurin). */
const integral = (f: (x: number) => number, from: number, to: number, step = STEP) => {
  let total = 0;
  for (let x = from; x <= to; x += step) total += f(x) * step;
  return total;
};

const PHI = new Map<number, number>();
const phi = (index: number) => {
  if (!PHI.has(index)) PHI.set(index, normalCdf(index * STEP));
  return PHI.get(index)!;
};

/** Mean and standard deviation of the range of n normal values, by integration over its distribution. */
function rangeMoments(n: number) {
  const last = Math.round(REACH / STEP);
  const exceeded = (w: number) => {
    let within = 0;
    for (let i = -last; i <= last; i += 1) within += n * density(i * STEP) * (phi(i + w) - phi(i)) ** (n - 1) * STEP;
    return 1 - within;
  };
  const mean = integral(x => 1 - normalCdf(x) ** n - normalCdf(-x) ** n, -REACH, REACH);
  // Simpson's rule: this one starts at w = 0 where it does not vanish smoothly.
  let square = 0;
  for (let w = 0; w <= 2 * last; w += 1) {
    const weight = w === 0 || w === 2 * last ? 1 : w % 2 === 1 ? 4 : 2;
    square += (weight * 2 * w * STEP * exceeded(w) * STEP) / 3;
  }
  return { mean, deviation: Math.sqrt(square - mean * mean) };
}

test.each(RANGE_CONSTANTS.map(row => [row.n, row]))('n = %d: d2 and d3 as integrated', (n, { d2, d3 }) => {
  const { mean, deviation } = rangeMoments(n);
  expect(d2).toBeCloseTo(mean, 7);
  expect(d3).toBeCloseTo(deviation, 6);
});

// ISO 7870-2, e-Handbook 6.3.2: A2, D3, D4; digits computed in R.
test.each([
  [2, 1.1284, 0.8525, 1.88, 0, 3.2665],
  [4, 2.0588, 0.8798, 0.7286, 0, 2.2821],
  [5, 2.3259, 0.8641, 0.5768, 0, 2.1145],
  [10, 3.0775, 0.7971, 0.3083, 0.223, 1.777],
])('n = %d: d2, d3 and the factors that follow from them', (n, d2, d3, a2, lower, upper) => {
  const row = RANGE_CONSTANTS.find(constants => constants.n === n)!;
  expect(row.d2).toBeCloseTo(d2, 4);
  expect(row.d3).toBeCloseTo(d3, 4);
  expect(3 / row.d2 / Math.sqrt(n)).toBeCloseTo(a2, 4);
  expect(Math.max(0, 1 - (3 * row.d3) / row.d2)).toBeCloseTo(lower, 4);
  expect(1 + (3 * row.d3) / row.d2).toBeCloseTo(upper, 4);
});

test('nine rows, n = 2 to 10, d2 growing', () => {
  expect(RANGE_CONSTANTS.map(({ n }) => n)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10]);
  const growing = RANGE_CONSTANTS.map(({ d2 }) => d2);
  expect([...growing].sort((a, b) => a - b)).toEqual(growing);
});
