import chiSquareReference from '@stdlib/stats-base-dists-chisquare-quantile';
import fReference from '@stdlib/stats-base-dists-f-cdf';
import fQuantileReference from '@stdlib/stats-base-dists-f-quantile';
import tCdfReference from '@stdlib/stats-base-dists-t-cdf';
import tReference from '@stdlib/stats-base-dists-t-quantile';
import { chiSquareQuantile } from '../../../src/core/quality/chiSquareQuantile';
import { fUpperTail } from '../../../src/core/quality/fUpperTail';
import { tQuantile, tUpperTail } from '../../../src/core/quality/tQuantile';

const DF = [1, 2, 3, 7.930235, 12, 25, 49, 120, 1000.5];
const relative = (a: number, b: number) => Math.abs(a / b - 1);

// NIST/SEMATECH e-Handbook 1.3.6.7.2 (t), three decimals.
test.each([
  [0.9, 1, 3.078],
  [0.95, 5, 2.015],
  [0.975, 1, 12.706],
  [0.975, 10, 2.228],
  [0.975, 30, 2.042],
  [0.99, 20, 2.528],
  [0.999, 100, 3.174],
])('t quantile %d with %d degrees of freedom is %d', (p, df, expected) => expect(tQuantile(p, df)).toBeCloseTo(expected, 3));

// NIST/SEMATECH e-Handbook 1.3.6.7.3 (upper 5 % of F), three decimals; 2.124 is quoted by GUM H.5.
test.each([
  [161.448, 1, 1],
  [3.885, 2, 12],
  [2.866, 4, 20],
  [2.124, 9, 40],
])('F of %d with %d and %d degrees of freedom is exceeded with 5 %%', (F, df1, df2) => {
  expect(fUpperTail(F, df1, df2)).toBeCloseTo(0.05, 4);
});

// By definition: a ratio of variances is never below 0; one that computers cannot count any more (df1 · F beyond 1.8e308) is exceeded by none.
test.each([
  [0, 1],
  [1e308, 0],
  [Infinity, 0],
])('F of %d is exceeded with the probability %d', (F, expected) => expect(fUpperTail(F, 4, 20)).toBe(expected));

// NIST/SEMATECH e-Handbook 1.3.6.7.4 (chi-square), three decimals.
test.each([
  [0.025, 10, 3.247],
  [0.975, 10, 20.483],
  [0.95, 1, 3.841],
  [0.99, 50, 76.154],
  [0.05, 100, 77.929],
])('chi-square quantile %d with %d degrees of freedom is %d', (p, df, expected) =>
  expect(chiSquareQuantile(p, df)).toBeCloseTo(expected, 3),
);

test('quantiles agree with stdlib at any degrees of freedom', () => {
  for (const df of DF) {
    for (const p of [0.001, 0.025, 0.05, 0.3, 0.5, 0.9, 0.975, 0.9999]) {
      expect(relative(chiSquareQuantile(p, df), chiSquareReference(p, df))).toBeLessThan(1e-10);
      if (p > 0.5) expect(relative(tQuantile(p, df), tReference(p, df))).toBeLessThan(1e-10);
    }
  }
});

test('tails agree with stdlib at any degrees of freedom', () => {
  for (const df of DF) {
    for (const t of [0, 0.01, 0.5, 1, 2, 5, 20]) expect(relative(tUpperTail(t, df), tCdfReference(-t, df))).toBeLessThan(1e-10);
    for (const df1 of DF) {
      for (const F of [0.01, 0.5, 1, 2, 4]) {
        expect(Math.abs(fUpperTail(F, df1, df) - (1 - fReference(F, df1, df)))).toBeLessThan(1e-11);
      }
      expect(fUpperTail(fQuantileReference(0.95, df1, df), df1, df)).toBeCloseTo(0.05, 10);
    }
  }
});
