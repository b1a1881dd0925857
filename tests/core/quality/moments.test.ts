import { mean } from '../../../src/core/quality/mean';
import { standardDeviation } from '../../../src/core/quality/standardDeviation';
import { sum } from '../../../src/core/quality/sum';
import { univariate } from './nistFile';

// NIST StRD, univariate: certified values in the header of each file. Digits that agree: what doubles can hold of such data.
test.each([
  ['NumAcc1.dat', 3, 15, 15],
  ['NumAcc3.dat', 1001, 14, 9],
  ['Michelso.dat', 100, 14, 13],
  ['Lew.dat', 200, 14, 13],
])('%s: mean and standard deviation as certified', (name, count, meanDigits, deviationDigits) => {
  const set = univariate(name);
  expect(set.values).toHaveLength(count);
  expect(Math.abs(mean(set.values) / set.mean - 1)).toBeLessThan(10 ** -meanDigits);
  expect(Math.abs(standardDeviation(set.values) / set.standardDeviation - 1)).toBeLessThan(10 ** -deviationDigits);
});

test('a sum keeps what a plain one loses', () => {
  expect([1, 1e100, 1, -1e100].reduce((a, b) => a + b)).toBe(0);
  expect(sum([1, 1e100, 1, -1e100])).toBe(2);
});

test('values that do not differ have no scatter at all', () => {
  for (const value of [0.1, 27.5, 1 / 3, 1e-7]) {
    for (let count = 2; count < 40; count += 1) expect(standardDeviation(Array(count).fill(value))).toBe(0);
  }
});
