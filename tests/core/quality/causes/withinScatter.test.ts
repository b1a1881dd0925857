import { fUpperTail } from '../../../../src/core/quality/fUpperTail';
import { leastSquares } from '../../../../src/core/quality/causes/leastSquares';
import { withinScatter } from '../../../../src/core/quality/causes/withinScatter';
import { standardDeviation } from '../../../../src/core/quality/standardDeviation';
import { oneWay } from '../nistFile';

/** One-way analysis of variance out of the two fits. */
function oneWayF(groups: readonly (readonly number[])[]) {
  const values = Float64Array.from(groups.flat());
  const numbers = groups.flatMap((group, number) => group.map(() => number));
  const { scatter, df } = withinScatter([], values, numbers);
  const total = leastSquares([values.map(() => 1)], values).residualSquares;
  const between = total - scatter ** 2 * df;
  const F = between / (groups.length - 1) / scatter ** 2;
  return { F, p: fUpperTail(F, groups.length - 1, df), between, within: scatter ** 2 * df, df };
}

// NIST StRD, analysis of variance: certified F in the header of each file.
test.each([
  ['SiRstvt.dat', 1e-9],
  ['AtmWtAgt.dat', 1e-7],
  ['SmLs01t.dat', 1e-12],
  ['SmLs04t.dat', 1e-7],
])('%s: F as certified', (name, close) => {
  const { groups, F } = oneWay(name);
  expect(Math.abs(oneWayF(groups).F / F - 1)).toBeLessThan(close);
});

test('the worked example of the e-Handbook', () => {
  // NIST/SEMATECH e-Handbook 7.4.3.
  const { F, p, between, within, df } = oneWayF([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  expect(df).toBe(12);
  expect(between).toBeCloseTo(27.897, 3);
  expect(within).toBeCloseTo(17.452, 3);
  expect(F).toBeCloseTo(9.59, 2);
  expect(p).toBeCloseTo(0.00325, 5);
});

test('GUM H.5: ten days × five, F 2.2615 against 2.124 (95 %)', () => {
  // GUM (JCGM 100:2008) H.5, table H.9: daily means and their standard deviations in µV above 10 V (the table recalled from memory; s of the means 57
  // and F 2.2615 against 2.124 published).
  const means = [172, 116, 13, 144, 106, 31, 60, 125, 163, 41];
  const deviations = [60, 77, 111, 101, 67, 93, 80, 73, 88, 86];
  const noise = [-2, -1, 0, 1, 2].map(value => value / Math.sqrt(2.5));
  const { F, p } = oneWayF(means.map((mean, day) => noise.map(value => mean + value * deviations[day]!)));
  expect(standardDeviation(means)).toBeCloseTo(57, 0);
  expect(F).toBeCloseTo(2.2615, 4);
  expect(fUpperTail(2.124, 9, 40)).toBeCloseTo(0.05, 4);
  expect(p).toBeLessThan(0.05);
});

test('a column that others make up is left out', () => {
  const ones = Float64Array.of(1, 1, 1, 1);
  const half = Float64Array.of(1, 1, 0, 0);
  const otherHalf = Float64Array.of(0, 0, 1, 1);
  const { coefficients, rank, residualSquares } = leastSquares([ones, half, otherHalf], Float64Array.of(3, 5, 1, 1));
  expect([rank, residualSquares]).toEqual([2, expect.closeTo(2, 12)]);
  expect(coefficients).toEqual([expect.closeTo(1, 12), expect.closeTo(3, 12), 0]);
});
