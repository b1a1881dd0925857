import reference from '@stdlib/math-base-special-gammaln';
import { lnGamma } from '../../../src/core/quality/lnGamma';

// Γ(1/2) = √π and Γ(n) = (n − 1)!: NIST Digital Library of Mathematical Functions 5.4.6 and 5.4.1.
test.each([
  [0.5, Math.log(Math.sqrt(Math.PI))],
  [1, 0],
  [2, 0],
  [5, Math.log(24)],
  [11, Math.log(3_628_800)],
  [21, Math.log(2_432_902_008_176_640_000)],
])('lnGamma(%d) is %d', (x, expected) => expect(lnGamma(x)).toBeCloseTo(expected, 13));

// ISO 7870-2, e-Handbook 6.3.2: c4 = √(2/(n − 1)) · Γ(n/2) ÷ Γ((n − 1)/2), published; digits computed in R.
test.each([
  [2, 0.7979],
  [4, 0.9213],
  [5, 0.94],
  [10, 0.9727],
])('gives the chart constant c4 of n = %d: %d', (n, c4) => {
  expect(Math.sqrt(2 / (n - 1)) * Math.exp(lnGamma(n / 2) - lnGamma((n - 1) / 2))).toBeCloseTo(c4, 4);
});

test('agrees with stdlib from tiny to large arguments', () => {
  for (let exponent = -8; exponent <= 6; exponent += 0.01) {
    const x = 10 ** exponent;
    const expected = reference(x);
    expect(Math.abs(lnGamma(x) - expected)).toBeLessThan(2e-14 * Math.max(1, Math.abs(expected)));
  }
});
