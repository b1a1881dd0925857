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

test('agrees with stdlib from tiny to large arguments', () => {
  for (let exponent = -8; exponent <= 6; exponent += 0.01) {
    const x = 10 ** exponent;
    const expected = reference(x);
    expect(Math.abs(lnGamma(x) - expected)).toBeLessThan(2e-14 * Math.max(1, Math.abs(expected)));
  }
});
