import reference from '@stdlib/stats-base-dists-normal-cdf';
import { normalCdf } from '../../../src/core/quality/normalCdf';

// NIST/SEMATECH e-Handbook 1.3.6.7.1, cumulative distribution of the standard normal: area from 0 to z, five decimals.
test.each([
  [0, 0.0],
  [0.5, 0.19146],
  [1, 0.34134],
  [1.96, 0.475],
  [2, 0.47725],
  [3, 0.49865],
])('the area between 0 and %d is %d, as the e-Handbook tabulates it', (z, area) => {
  expect(normalCdf(z) - 0.5).toBeCloseTo(area, 5);
  expect(0.5 - normalCdf(-z)).toBeCloseTo(area, 5);
});

test('both tails agree with the whole distribution of stdlib to 1e-12 of the value', () => {
  for (let z = -37; z <= 9; z += 0.037) {
    expect(Math.abs(normalCdf(z) / reference(z, 0, 1) - 1)).toBeLessThan(1e-12);
  }
});
